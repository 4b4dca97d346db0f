"""Two answers of one worksheet side by side: what was changed, and what that changes."""

import re
from decimal import Decimal

from calc.render.answer import verdict_html
from calc.render.html import Markup, el
from calc.units.shown import MINUS, NARROW_SPACE, decimal_sign, grouped
from calc.worksheet.answer import Answer
from calc.worksheet.outputs import Output

_FIRST = 3  # results in sight; the form below must stay in reach
_FIGURE = re.compile(rf"({MINUS}?[\d{NARROW_SPACE}]+(?:[.,]\d+)?)(\D.*)?")


def compare_html(kept: Answer, now: Answer) -> Markup:
    """Return the answer that was kept beside the one of now, with the ways to end that."""
    inputs = [
        (field.label, kept.inputs[field.id].text, now.inputs[field.id].text)
        for field in now.worksheet.fields
        if not field.hidden and _told(kept, field.id) != _told(now, field.id)
    ]
    results = [row for one in now.worksheet.results if (row := _result(one, kept, now))]
    changed = [row for row in results if row[1] != row[2]]
    same = len(results) - len(changed)
    return el(
        "section",
        el("h3", "Compared with the answer you kept"),
        el(
            "table",
            el("thead", el("tr", *(el("th", h, scope="col") for h in ("", "Kept", "Now")))),
            el(
                "tbody",
                el(
                    "tr",
                    el("th", "Verdict", scope="row"),
                    *(el("td", verdict_html(one.verdict)) for one in (kept, now)),
                ),
                *(_row(label, old, new, "") for label, old, new in inputs),
                *(_row(*row) for row in changed[:_FIRST]),
            ),
            class_="lw-table lw-compare",
        )
        if inputs or changed
        else el("p", "Kept. Change a value to see both answers."),
        _folded(changed[_FIRST:]),
        el("p", f"{same} other result{'s are' if same > 1 else ' is'} the same.", class_="lw-hint")
        if changed and same
        else None,
        el(
            "p",
            el("button", "Back to the kept values", type="button", data_kept_back=True,
               class_="lw-button lw-plain") if inputs else None,
            " ",
            el("button", "Stop comparing", type="button", data_kept_end=True,
               class_="lw-button lw-plain"),
        ),
        class_="lw-compared",
        aria_label="Comparison",
    )  # fmt: skip


def _folded(rows: list[tuple[str, str, str, str]]) -> Markup | None:
    if not rows:
        return None
    return el(
        "details",
        el("summary", f"More differences ({len(rows)})"),
        el("table", el("tbody", *(_row(*row) for row in rows)), class_="lw-table lw-compare"),
        data_fold="differences",
    )


def difference(kept: str, now: str) -> str:
    """Return by how much two figures differ as they are shown, nothing where they cannot be taken.

    Of the figures that stand there, so that a reader who subtracts them finds the same.
    """
    one, other = (_FIGURE.fullmatch(text.partition(" (")[0]) for text in (kept, now))
    if not one or not other or one[2] != other[2]:
        return ""
    old, new = (Decimal(_plain(found[1])) for found in (one, other))
    sign = "+" if new > old else ""
    return f"{sign}{grouped(f'{new - old:f}')}{other[2] or ''}" if new != old else ""


def _plain(number: str) -> str:
    return number.replace(MINUS, "-").replace(NARROW_SPACE, "").replace(decimal_sign.get(), ".")


def _told(answer: Answer, name: str) -> str:
    """Return what a field says, nothing where it has no meaning beside the others."""
    reading = answer.inputs[name]
    return reading.text if reading.applies else ""


def _result(output: Output, kept: Answer, now: Answer) -> tuple[str, str, str, str] | None:
    """Return a result's label, both its texts and their difference, None for what is no figure."""
    values = kept.values[output.id], now.values[output.id]
    if values == (None, None) or any(isinstance(one, tuple) for one in values):
        return None
    texts = kept.shown[output.id], now.shown[output.id]
    return output.label, *texts, difference(*texts) if output.kind else ""


def _row(label: str, old: str, new: str, by: str) -> Markup:
    more = (" ", el("small", by)) if by else ()
    return el("tr", el("th", label, scope="row"), el("td", old), el("td", new, *more))
