"""What a client reads: the advice, why, what happens if nothing is done, as HTML.

The same markup is made twice: as a template with empty places, which the page fills with the texts
of a link before Python has started, and of a worked answer, with its numbers.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from calc.judge import Level
from calc.render.advice import (
    IF,
    bar_html,
    cautions_html,
    compared_html,
    neglect_html,
    sentence_html,
    why_html,
)
from calc.render.answer import verdict_html
from calc.render.html import Markup, el, join
from calc.units.kinds import KINDS
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Declaration
from calc.worksheet.explain import Explained, Explanation, headlines
from calc.worksheet.fields import Choice

JOINING = ("to", "and", "at", "most", "least", "between", "about", "or", "by", "more", "less")
"""Words that a shown number may have beside it."""


def client_html(answer: Answer, how: Explanation, said: Explained) -> Markup:
    """Return what is `said` of a worked answer."""

    def put(name: str, _: int) -> Markup:
        return el("b", said.values[name])

    asked = headlines(answer.worksheet)
    finding = (
        [sentence_html(asked[said.rule], lambda _, n: el("b", said.found[n]))] if said.rule else []
    )
    reasons = [*finding, *(sentence_html(how.reasons[n].text, put) for n in said.reasons)]
    return join(
        el(
            "p",
            verdict_html(answer.verdict),
            " ",
            sentence_html(how.advice[said.advice].text, put),
            class_="lc-advice",
        ),
        compared_html(
            bar_html(bar.label, put(bar.name, 0), share)
            for bar, share in zip(how.bars, said.shares, strict=True)
            if share is not None
        ),
        why_html(el("li", reason) for reason in reasons),
        neglect_html([el("p", sentence_html(how.neglect[said.neglect].text, put))]),
        cautions_html(el("li", sentence_html(how.cautions[n].text, put)) for n in said.cautions),
    )


def template(sheet: Declaration, how: Explanation, usual: Answer) -> dict[str, Any]:
    """Return what a page needs to show a link of the sheet before anything is worked.

    `html` holds every sentence, hidden, with empty places; of all else the page knows only which
    texts may go into them: the `words` beside a number, and whole `phrases`. `usual` has the
    defaults, of the numbered `set`.
    """
    return {
        "title": sheet.question,
        "set": str(sheet.default_set),
        "html": _template_html(sheet, how),
        "usual": {f.id: usual.shown[f.id] for f in sheet.fields if f.id in how.names},
        "labels": {field.id: field.label for field in sheet.fields},
        "choices": dict(_choices(sheet)),
        "signs": {unit.link: unit.symbol for kind in KINDS for unit in kind.units if unit.link},
        "words": words(),
        "phrases": sorted(set(phrases(sheet))),
    }


def words() -> list[str]:
    """Return the words that a shown number may have beside it, its unit among them."""
    return sorted({*JOINING, *_units()})


def _template_html(sheet: Declaration, how: Explanation) -> Markup:
    def put(name: str, _: int) -> Markup:
        return el("b", "…", data_value=name)

    def hidden(tag: str, inside: object, **named: object) -> Markup:
        return el(tag, inside, hidden=True, **named)

    advice = (
        el(
            "span",
            el("small", IF) if point.of == Level.FINE else None,
            sentence_html(point.text, put),
            data_advice=n,
            hidden=True,
        )
        for n, point in enumerate(how.advice)
    )
    findings = (
        hidden("li", sentence_html(text, lambda _, n: el("b", "…", data_found=n)), data_rule=rule)
        for rule, text in headlines(sheet).items()
    )
    reasons = (
        hidden("li", sentence_html(point.text, put), data_reason=n)
        for n, point in enumerate(how.reasons)
    )
    return join(
        el("p", *advice, class_="lc-advice"),
        compared_html(
            bar_html(bar.label, put(bar.name, 0), 0, data_row=n, hidden=True)
            for n, bar in enumerate(how.bars)
        ),
        why_html([*findings, *reasons]),
        neglect_html(
            hidden("p", sentence_html(point.text, put), data_neglect=n)
            for n, point in enumerate(how.neglect)
        ),
        cautions_html(el("li", sentence_html(point.text, put)) for point in how.cautions),
    )


def _options(sheet: Declaration) -> Iterator[Any]:
    for field in sheet.fields:
        if isinstance(field, Choice):
            yield from field.options


def _choices(sheet: Declaration) -> Iterator[tuple[str, str]]:
    """Yield each choice as a link has it, and as it is shown."""
    for field in sheet.fields:
        if isinstance(field, Choice):
            for option in field.options:
                reading = field.read(option.id)
                yield reading.link, reading.text


def phrases(sheet: Declaration) -> Iterator[str]:
    """Yield the texts without a number that a result or a choice may be shown as."""
    yield from (option.label or option.id for option in _options(sheet))
    for output in (*sheet.results, *sheet.intermediates):
        yield from (output.words or {}).values()


def _units() -> Iterator[str]:
    for kind in KINDS:
        for unit in kind.units:
            yield from unit.symbol.split()
            yield from (one for one in unit.spellings if "·" in one)  # as older links have it
    yield from ("AWG", "kcmil", "SAE", "mm²", "×")
