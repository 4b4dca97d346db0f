"""The pictures of a short: the loop that holds its current, and the times of two fuses."""

from math import ceil, floor, log10

from calc.render.html import Markup, el
from calc.render.svg import LEFT, RIGHT, figure, line, rect, text
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Shares, Spans

_FILLS = ("lw-bar", "lw-part lw-copper", "lw-part lw-seat")
_SHORTEST, _LONGEST = 1e-3, 1e6  # s
_LABELS = 4


def shares(answer: Answer, loop: Shares) -> Markup:
    """Return the loop as a circuit and its parts as shares of one bar."""
    total = answer.values[loop.total]
    x, drawn, said = LEFT, list[object](), []
    for place, (name, words) in enumerate(loop.parts):
        share = answer.values[name] / total
        width = share * (RIGHT - LEFT)
        drawn.append(rect(x, 84, width, 22, _FILLS[place % len(_FILLS)], 2))
        drawn.append(_key(place, f"{words} {answer.shown[name]}"))
        said.append(f"{words} {answer.shown[name]}, {100 * share:.0f} %")
        x += width
    passed = answer.shown[loop.result]
    whole = f"Loop of a short: {'; '.join(said)}. In all {answer.shown[loop.total]}, so {passed}."
    return figure(182, whole, loop.caption, _circuit(passed), drawn)


def _key(place: int, words: str) -> Markup:
    top = 116 + 22 * place
    return el(
        "g",
        rect(LEFT, top, 14, 14, _FILLS[place % len(_FILLS)], 2),
        text(LEFT + 22, top + 12, words, anchor="start"),
    )


def _circuit(passed: str) -> Markup:
    """Return a battery on the left, two wires, and a flash where they touch on the right."""
    return el(
        "g",
        el("path", d="M60 34V12H236V26M60 44V66H236V52", class_="lw-wire"),
        el("path", d="M46 34H74M52 44H68", class_="lw-wire"),
        el("path", d="M236 24l7 10-12 4 12 6-7 10", class_="lw-flash"),
        text(148, 44, passed, class_="lw-words lw-strong"),
    )


def spans(answer: Answer, times: Spans) -> Markup:
    """Return each span between its earliest and its latest, open where an end is not known."""
    known = [
        answer.values[name]
        for _, early, late in times.spans
        for name in (early, late)
        if answer.values[name]
    ]
    if not known:
        return Markup("")
    low = floor(log10(max(min(known), _SHORTEST))) - 1
    high = floor(log10(min(max(known), _LONGEST))) + 2

    def place(seconds: float) -> float:
        at = (log10(seconds) - low) / (high - low)
        return LEFT + (RIGHT - LEFT) * min(max(at, 0.0), 1.0)

    drawn, said = list[object](), []
    for row, (words, early, late) in enumerate(times.spans):
        top = 20 + 46 * row
        first, last = answer.values[early], answer.values[late]
        start = place(first) if first else LEFT
        end = place(last) if last else RIGHT
        open_ = "" if first and last else " lw-open-end"
        bounds = _bounds(answer, early, late)
        drawn.append(text(LEFT, top - 6, f"{words}: {bounds}", anchor="start"))
        drawn.append(rect(LEFT, top + 6, RIGHT - LEFT, 4, "lw-track", 2))
        drawn.append(rect(start, top, max(end - start, 3), 16, f"lw-bar{open_}", 2))
        said.append(f"{words} {bounds}")
    bottom = 20 + 46 * len(times.spans)
    step = ceil((high - low) / _LABELS)
    for power in range(low, high + 1, step):
        at = place(10.0**power)
        drawn.append(line(at, bottom - 20, bottom - 12, "lw-tick"))
        drawn.append(text(at, bottom + 2, _decade(power), class_="lw-words lw-quiet"))
    return figure(bottom + 10, f"Time to opening: {'; '.join(said)}.", times.caption, drawn)


def _bounds(answer: Answer, early: str, late: str) -> str:
    first, last = answer.values[early], answer.values[late]
    if first and last:
        return f"{answer.shown[early]} to {answer.shown[late]}"
    if last:
        return f"at most {answer.shown[late]}"
    return f"at least {answer.shown[early]}" if first else "not known"


def _decade(power: int) -> str:
    return f"{10**power} s" if power >= 0 else f"{10.0**power:g} s"
