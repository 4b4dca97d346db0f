"""The pictures of a short: the loop that holds its current, and the times of two fuses."""

from math import ceil, floor, log10

from calc.render.html import Markup, el
from calc.render.parts import parts_of
from calc.render.svg import ASCENT, LEFT, PITCH, RIGHT, figure, line, rect, spread, text, told
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Shares, Spans

_SHORTEST, _LONGEST = 1e-3, 1e6  # s
_LABELS = 4


def shares(answer: Answer, loop: Shares) -> Markup:
    """Return the loop as a circuit and its parts as shares of one bar."""
    passed = answer.shown[loop.result]
    said = f"Loop of a short, which passes {passed}, {answer.shown[loop.total]} in all"
    head = (_circuit(passed), 74.0, said)
    return parts_of(answer, loop.parts, loop.caption, head=head)


def _circuit(passed: str) -> Markup:
    """Return a battery on the left, two wires, and a flash where they touch on the right."""
    return el(
        "g",
        el("path", d="M40 34V12H276V26M40 44V66H276V52", class_="lw-wire"),
        el("path", d="M26 34H54M32 44H48", class_="lw-wire"),
        el("path", d="M276 24l7 10l-12 4l12 6l-7 10", class_="lw-flash"),
        text(158, 44, passed, class_="lw-words lw-strong"),
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

    y, drawn, said = 0.0, list[object](), []
    for words, early, late in times.spans:
        first, last = answer.values[early], answer.values[late]
        start = place(first) if first else LEFT
        end = place(last) if last else RIGHT
        open_ = "" if first and last else " lw-open-end"
        bounds = _bounds(answer, early, late)
        key, y = told(y, f"{words[0].upper()}{words[1:]}", bounds)
        drawn += [key, rect(LEFT, y + 8, RIGHT - LEFT, 4, "lw-track", 2)]
        drawn.append(
            rect(min(start, RIGHT - 3), y + 2, max(end - start, 3), 16, f"lw-bar{open_}", 2)
        )
        y += 26
        said.append(f"{words} {bounds}")
    step = ceil((high - low) / _LABELS)
    powers = range(low, high + 1, step)
    drawn += [line(place(10.0**power), y - 6, y, "lw-tick") for power in powers]
    drawn += spread(y + ASCENT, [(place(10.0**power), _decade(power)) for power in powers])
    said_ = "; ".join(said)
    return figure(y + PITCH, f"Time to opening: {said_}.", times.caption, drawn)


def _bounds(answer: Answer, early: str, late: str) -> str:
    first, last = answer.values[early], answer.values[late]
    if first and last:
        return f"{answer.shown[early]} to {answer.shown[late]}"
    if last:
        return f"at most {answer.shown[late]}"
    return f"at least {answer.shown[early]}" if first else "not known"


def _decade(power: int) -> str:
    return f"{10**power} s" if power >= 0 else f"{10.0**power:g} s"
