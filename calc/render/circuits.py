"""Small circuits: where a meter's probes go, and a switch within reach."""

from calc.render.html import Markup, el
from calc.render.svg import ASCENT, LEFT, RIGHT, figure, path, rect, text, told, wide
from calc.units.shown import with_mm2
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Probes, Remote

_PLUS, _MINUS = 42.0, 120.0  # the heights of the two wires
_ENDS = (_PLUS + 18, _MINUS - 18)  # between them bank and device
# How far along its wire each place of the search stands
_ON_PLUS = {"bank_plus": 34, "lug_plus": 62, "fuse_in": 104, "fuse_out": 164, "run_lug": 190}
_ON_PLUS |= {"far_lug": 250, "far_plus": 278}
_ON_MINUS = {"bank_minus": 34, "lug_minus": 62, "ground": 124, "ground_lug": 164, "return_lug": 250}
_ON_MINUS |= {"far_minus": 278}
_CLEAR = 10.0  # how far a word reaches past its probe towards another's
_LIKE = {"starter_plus": "bank_plus", "input_plus": "far_plus", "input_minus": "far_minus"}


def probes_html(answer: Answer, picture: Probes) -> Markup:
    """Return the run with its probes, or nothing where no meter goes on it."""
    red, black = answer.values[picture.red], answer.values[picture.black]
    clamp = answer.values[picture.clamp]
    spots = [
        (_spot(place), word)
        for place, word in ((red, "red"), (black, "black"), (clamp, "clamp"))
        if place
    ]
    known = [(spot, word) for spot, word in spots if spot]
    if not known or len(known) < len(spots):
        return Markup("")
    device = "Charger" if answer.values[picture.charging] else "Device"
    bank = "Starter" if "starter_plus" in (red, black) or "input_plus" in (red, black) else "Bank"
    return figure(
        _MINUS + 18 + ASCENT + 5,
        f"A run from the {bank.lower()} over a fuse to the {device.lower()} and back over the"
        f" ground point. {answer.shown[picture.told]}",
        picture.caption,
        _run(bank, device),
        [
            _mark(spot, word, known[1 - at][0] if known[1:] else None)
            for at, (spot, word) in enumerate(known)
        ],
    )


def _spot(place: str) -> tuple[float, float] | None:
    place = _LIKE.get(place, place)
    if place in _ON_PLUS:
        return _ON_PLUS[place], _PLUS
    return (_ON_MINUS[place], _MINUS) if place in _ON_MINUS else None


def _run(bank: str, device: str) -> Markup:
    top, foot = _ENDS
    left, right = _ON_PLUS["bank_plus"], _ON_PLUS["far_plus"]
    fuse = _ON_PLUS["fuse_in"]
    middle = (top + foot) / 2 + 5
    return el(
        "g",
        path(f"M{left} {top:g}V{_PLUS:g}H{right}V{top:g}", "lw-wire"),
        path(f"M{left} {foot:g}V{_MINUS:g}H{right}V{foot:g}", "lw-wire"),
        path(f"M{_ON_MINUS['ground']} {_MINUS - 9:g}v18", "lw-wire"),
        rect(LEFT, top, 72, foot - top, "lw-part", 3),
        rect(RIGHT - 72, top, 72, foot - top, "lw-part", 3),
        rect(fuse, _PLUS - 12, 60, 24, "lw-part", 3),
        text(fuse + 30, _PLUS + 5, "Fuse"),
        text(LEFT + 36, middle, bank),
        text(RIGHT - 36, middle, device),
        text(_ON_MINUS["ground"], _MINUS - 14, "Ground"),
        [
            el("circle", cx=x, cy=f"{y:g}", r="3.5", class_="lw-joint")
            for places, y in ((_ON_PLUS, _PLUS), (_ON_MINUS, _MINUS))
            for x in places.values()
        ],
    )


def _mark(spot: tuple[float, float], word: str, other: tuple[float, float] | None) -> Markup:
    """Return a probe from outside with its word, which keeps clear of the `other` one's."""
    x, y = spot
    up = -1 if y == _PLUS else 1
    at = y - 20 if up < 0 else y + 18 + ASCENT
    if word == "clamp":
        ring = el("ellipse", cx=f"{x:g}", cy=f"{y:g}", rx="7", ry="13", class_="lw-clamp")
        return el("g", ring, text(x, at, word, class_="lw-words lw-strong"))
    tip = path(f"M{x:g} {y + 4 * up:g}l-7 {11 * up}h14z", f"lw-probe-{word}")
    half = wide(word, True) / 2
    if other and other[1] == y:
        x += (half - _CLEAR) * (1 if x > other[0] else -1)
    return el("g", tip, text(x, at, word, class_="lw-words lw-strong"))


def remote_html(answer: Answer, picture: Remote) -> Markup:
    """Return a switch within reach, in the line or at a relay's coil."""
    name, with_relay = picture.relay
    relay, shown = answer.values[name] == with_relay, answer.shown
    keys: list[tuple[str, str]] = [("Contact, rated at least", shown[picture.contact])]
    if relay:
        keys.append(("Wire to the coil", with_mm2(shown[picture.wire])))
        if answer.values[picture.fuse] is not None:
            keys.append(("Fuse of the coil’s wire", shown[picture.fuse]))
        y, drawing = 128.0, _relay()
        said = "Bank, fuse and a relay’s contact feed the load; the switch works its coil."
    else:
        if answer.values[picture.line] is not None:
            keys.append(("Wire of the line", with_mm2(shown[picture.line])))
        y, drawing = 66.0, _line()
        said = "Bank and fuse feed the load through the switch itself."
    drawn = [drawing]
    for words, value in keys:
        key, y = told(y, words, value)
        drawn.append(key)
    told_ = "; ".join(f"{words} {value}" for words, value in keys)
    return figure(y, f"{said} {told_}.", picture.caption, *drawn)


def _box(x: float, y: float, room: float, words: str) -> Markup:
    return el("g", rect(x, y - 14, room, 28, "lw-part", 3), text(x + room / 2, y + 5, words))


def _contact(x: float, y: float) -> Markup:
    """Return an open contact, 40 wide."""
    ends = [
        el("circle", cx=f"{at:g}", cy=f"{y:g}", r="3.5", class_="lw-joint") for at in (x, x + 40)
    ]
    return el("g", path(f"M{x:g} {y:g}l36 -14", "lw-wire"), ends)


def _line() -> Markup:
    y = 30.0
    return el(
        "g",
        path(f"M50 {y:g}H158M198 {y:g}H262", "lw-wire"),
        _box(LEFT, y, 56, "Bank"),
        _box(84, y, 52, "Fuse"),
        _contact(158, y),
        _box(RIGHT - 56, y, 56, "Load"),
        text(178, y + 28, "switch within reach"),
    )


def _relay() -> Markup:
    y, low = 26.0, 78.0
    return el(
        "g",
        path(f"M50 {y:g}H190M230 {y:g}H262", "lw-wire"),
        path(f"M30 {y + 14:g}V{low:g}H98M138 {low:g}H190", "lw-wire lw-thin"),
        path(f"M210 {low - 14:g}V{y - 4:g}", "lw-lead lw-dashed"),
        _box(LEFT, y, 56, "Bank"),
        _box(84, y, 52, "Fuse"),
        _contact(190, y),
        _box(RIGHT - 56, y, 56, "Load"),
        _contact(98, low),
        _box(190, low, 52, "Coil"),
        text(118, low + 28, "switch within reach"),
    )
