"""The frame of what a client reads, of an answer as of a van: why, if nothing is done, cautions."""

from collections.abc import Callable, Iterable

from calc.render.html import Markup, el, join
from calc.units.shown import with_sign
from calc.worksheet.shown_values import NAME

Place = Callable[[str, int], Markup]
"""What stands for a name in a sentence; the number counts the names of a headline."""

IF = "If these numbers are right: "
"""What stands before advice that nobody has checked: a link alone never makes anything fine."""

_MOST_TOLD = 4


def sentence_html(text: str, put: Place) -> Markup:
    """Return a sentence with what `put` gives in the place of each name."""
    pieces = NAME.split(with_sign(text))
    return join(*(put(one, n // 2) if n % 2 else one for n, one in enumerate(pieces)))


def compared_html(rows: Iterable[Markup]) -> Markup | None:
    """Return bars to compare, nothing where there is none."""
    made = list(rows)
    return el("div", *made, class_="lc-bars", role="group", aria_label="Compared") if made else None


def bar_html(label: str, value: Markup, share: int, **named: object) -> Markup:
    """Return a value with its label and its bar, `share` percent of the longest."""
    drawn = el(
        "svg",
        el("rect", width="100%", height="100%", class_="lw-track"),
        el("rect", width=f"{share}%", height="100%", class_="lc-fill", data_bar="width"),
        aria_hidden="true",
    )
    return el("p", el("span", label), " ", value, drawn, class_="lc-bar", **named)


def why_html(items: Iterable[Markup]) -> Markup:
    """Return the reasons under their heading."""
    return join(el("h2", "Why"), el("ol", *items))


def neglect_html(said: Iterable[Markup]) -> Markup:
    """Return what happens if nothing is done under its heading."""
    return join(el("h2", "If nothing is done"), *said)


def cautions_html(items: Iterable[Markup]) -> Markup | None:
    """Return the cautions, nothing where there is none."""
    made = list(items)
    return el("ul", *made, class_="lc-cautions", aria_label="Cautions") if made else None


def state_html(told: list[Markup]) -> Markup:
    """Return how a link stands to a fresh calculation: `told` is what differs."""
    if not told:
        return join("Checked: calculated again on this device, with the same result.")
    return join(
        el("b", "The link differs from what its values give."),
        " What you read here is calculated on this device.",
        el("ul", *(el("li", one) for one in told[:_MOST_TOLD])),
    )
