"""An answer as HTML: verdict, figures, picture, cautions, working, conditions and sources."""

import re
from collections.abc import Collection, Iterator, Sequence
from functools import cache, partial

from calc.judge import Level
from calc.render.drawings import picture_html
from calc.render.folds import Fold, fold_html
from calc.render.html import Markup, el, join
from calc.render.next_steps import are_next_steps, leads_html, next_steps_html
from calc.render.table import table_html
from calc.sources import Source
from calc.units.shown import with_mm2
from calc.worksheet.answer import Answer, Line, Said
from calc.worksheet.outputs import Output
from calc.worksheet.result_table import Table

_LONG_LIST = 4
_BESIDE = 2  # results that stand beside the answer's figure
_LONG_FIGURE = 24  # characters; more is a sentence, and would fill a phone at the size of a figure
_WORDS = {Level.FINE: "Fine", Level.CAUTION: "Caution", Level.STOP: "Stop"}
_SHAPES = {
    Level.FINE: (
        el("circle", cx=12, cy=12, r=11),
        el("path", d="M6.5 12.5l3.8 3.8 7.2-8", class_="lw-mark"),
    ),
    Level.CAUTION: (
        el("path", d="M12 1.5 23.2 21.5H.8z"),
        el("path", d="M12 8v7M12 17.6v1.6", class_="lw-mark"),
    ),
    Level.STOP: (
        el("path", d="M7.4 1h9.2L23 7.4v9.2L16.6 23H7.4L1 16.6V7.4z"),
        el("path", d="M7.5 7.5l9 9M16.5 7.5l-9 9", class_="lw-mark"),
    ),
}


def shape_html(verdict: str) -> Markup:
    """Return the verdict's shape alone, for a place where a word stands beside it."""
    return el(
        "svg", *_SHAPES[Level(verdict)], viewBox="0 0 24 24", aria_hidden="true", class_="lw-shape"
    )


def word_of(verdict: str) -> str:
    """Return the word that stands for a verdict."""
    return _WORDS[Level(verdict)]


def verdict_html(verdict: str) -> Markup:
    """Return the verdict as a shape and a word, so that colour never stands alone."""
    return el(
        "span",
        shape_html(verdict),
        " ",
        el("span", word_of(verdict), class_="lw-word"),
        class_=f"lw-verdict lw-{verdict}",
    )


def summary_text(answer: Answer) -> str:
    """Return the answer in a few words."""
    sheet = answer.worksheet
    first = answer.values[sheet.results[0].id]
    gist = sheet.summary_none if first is None and sheet.summary_none else sheet.summary
    return gist.format_map(answer.shown)


def summary_html(answer: Answer) -> Markup:
    """Return the verdict with its reason, for the strip that stays in view."""
    words = el("span", answer.sentence, class_="lw-gist-words", data_rule=answer.rule or None)
    return join(verdict_html(answer.verdict), " ", words)


def key_html(answer: Answer) -> Markup:
    """Return what stands between question and fields: the figure, the results next to it, and the
    ways on where the answer is a question itself.
    """
    return join(
        _headline(answer),
        _results(answer, _single(answer)[:_BESIDE]),
        *(next_steps_html(answer, result) for result in _ways(answer) if _goes_on(answer, result)),
    )


def verdict_line(answer: Answer) -> Markup:
    """Return the verdict with its sentence."""
    sentence = el("span", answer.sentence, class_="lw-sentence")
    return el(
        "p",
        verdict_html(answer.verdict),
        " ",
        sentence,
        class_="lw-verdict-line",
        data_rule=answer.rule or None,
    )


def answer_html(answer: Answer, *, heading: str = "h2", open_: bool = False) -> Markup:
    """Return the whole answer, as an example shows it. `open_` unfolds the working."""
    return join(
        el(heading, "Answer", class_="lw-answer-title"),
        verdict_line(answer),
        _headline(answer),
        _results(answer, _single(answer)),
        *(next_steps_html(answer, result) for result in _ways(answer)),
        *_behind(answer),
        *map(fold_html, (*_listed(answer), *last_folds(answer, open_=open_))),
    )


def details_html(
    answer: Answer, *, done: float = 1.0, opened: Collection[str] | None = None
) -> Markup:
    """Return what a live sheet shows below its fields; `done` is the share that is worked.

    Of the folds only those that are `opened` are filled, all of them where it is None.
    """
    ways = [one for one in _ways(answer) if not _goes_on(answer, one)]
    return join(
        el("h2", "Details", class_="lw-answer-title"),
        _progress(done) if done < 1 else None,
        *_behind(answer, ways=ways),
        *(fold_html(fold, opened) for fold in folds(answer)),
    )


def folds(answer: Answer) -> Iterator[Fold]:
    """Yield what a live sheet shows folded, in its order."""
    if more := _single(answer)[_BESIDE:]:
        name = f"More results ({len(more)})"
        yield Fold("more-results", name, lambda: [_results(answer, more)])
    yield from _listed(answer)
    yield from last_folds(answer)


def _behind(answer: Answer, *, ways: Sequence[Output] = ()) -> Iterator[Markup | None]:
    """Yield what stands behind the answer: cautions first, then picture, tables and ways on."""
    yield cautions_html(answer)
    yield picture_html(answer)
    yield from (table_html(answer, one) for one in answer.worksheet.tables if not one.folded)
    yield from (next_steps_html(answer, one) for one in ways)
    yield leads_html(answer)


def _listed(answer: Answer) -> Iterator[Fold]:
    """Yield the results that are lists, and the tables that are folded."""
    tables = answer.worksheet.tables
    tabled = {table.of for table in tables}
    yield from (list_fold(answer, one) for one in _several(answer) if one.id not in tabled)
    for table in tables:
        if table.folded and answer.values[table.of]:
            label = answer.worksheet.result(table.of).label
            yield Fold(table.of, label, partial(_tabled, answer, table))


def _tabled(answer: Answer, table: Table) -> list[Markup | None]:
    return [table_html(answer, table)]


def last_folds(answer: Answer, *, open_: bool = False) -> Iterator[Fold]:
    """Yield the folds at the end of every answer: the working, the limits with their sources."""
    yield Fold("working", "Working, with your numbers", partial(_working, answer), open_)
    yield Fold("sources", "Limits and sources", partial(_limits, answer))


def _working(answer: Answer) -> list[Markup]:
    return [el("ol", *(_line(line) for line in answer.working), class_="lw-working")]


def _limits(answer: Answer) -> list[Markup | None]:
    return [
        el("p", answer.worksheet.valid),
        el("ul", *map(_said, answer.notes)) if answer.notes else None,
        el("ul", *map(_source, answer.sources), class_="lw-sources"),
    ]


def _source(source: Source) -> Markup:
    return el("li", el("strong", str(source)), f" — {source.read}." if source.read else ".")


def _shown(answer: Answer) -> list[Output]:
    """Return the results behind the first that have something to show."""
    values = answer.values
    others = answer.worksheet.results[1:]
    return [o for o in others if not (o.hide_if_none and values[o.id] is None)]


def _ways(answer: Answer) -> list[Output]:
    return [result for result in _shown(answer) if are_next_steps(answer.values[result.id])]


def _goes_on(answer: Answer, ways: Output) -> bool:
    """Whether `ways` are the next steps of this sheet itself, such as the replies to a question."""
    return any(not step.sheet for step in answer.values[ways.id])


def _several(answer: Answer) -> list[Output]:
    """Return the results that are lists, without the ways on."""
    ways = _ways(answer)
    values = answer.values
    lists = (one for one in _shown(answer) if isinstance(values[one.id], tuple))
    return [one for one in lists if values[one.id] and one not in ways]


def _single(answer: Answer) -> list[Output]:
    """Return the results that are one value each."""
    tabled = {table.of for table in answer.worksheet.tables}
    values = answer.values
    return [r for r in _shown(answer) if not isinstance(values[r.id], tuple) and r.id not in tabled]


def _headline(answer: Answer) -> Markup:
    first = answer.worksheet.results[0]
    figure = answer.shown[first.id] if answer.values[first.id] is not None else summary_text(answer)
    named = answer.values[first.id] is not None or not first.hide_if_none
    return el(
        "p",
        el("span", first.label, class_="lw-figure-label") if named else None,
        el("strong", *_figure(first, figure), class_=_figure_class(first, figure)),
        class_="lw-headline",
    )


def _results(answer: Answer, results: Sequence[Output]) -> Markup | None:
    rows = (_result(answer, result) for result in results)
    return el("dl", *rows, class_="lw-results") if results else None


def _progress(done: float) -> Markup:
    """Return how far a long sum has come; the page moves it on."""
    bar = el("progress", value=f"{done:g}", max="1", data_rest=True)
    return el("label", "Still working out the rest ", bar, class_="lw-progress")


def _figure(first: Output, figure: str) -> tuple[object, ...]:
    """Return the answer's figure, the same in the other system's units small behind it."""
    main, bracket, other = figure.partition(" (")
    return (main, " ", el("small", f"({other}")) if first.both and bracket else (figure,)


def _figure_class(first: Output, figure: str) -> str:
    long = len(figure) > _LONG_FIGURE and not first.both
    return "lw-figure lw-long" if long else "lw-figure"


def _result(answer: Answer, result: Output) -> Markup:
    shown = answer.shown[result.id]
    told = "lw-told" if result.kind is None and len(shown) > _LONG_FIGURE else None
    return el("div", el("dt", result.label), el("dd", shown, class_=told))


def list_fold(answer: Answer, result: Output) -> Fold:
    """Return a result that is a list, folded where it is long."""
    values = answer.values[result.id]

    def parts() -> list[Markup]:
        return [el("ul", *(el("li", with_mm2(str(part))) for part in values))]

    return Fold(result.id, result.label, parts, len(values) <= _LONG_LIST)


def cautions_html(answer: Answer) -> Markup | None:
    """Return what one should know that applies here."""
    if not answer.cautions:
        return None
    return el(
        "div",  # a section inside a section would end what is kept out of the search
        el("h3", "Cautions"),
        el("ul", *map(_said, answer.cautions)),
        class_="lw-cautions",
        role="group",  # no landmark: examples have their own
        aria_label="Cautions",
    )


def _said(said: Said) -> Markup:
    return el("li", said.text, _from(said.source), data_rule=said.rule or None)


@cache
def _from(source: Source | None) -> Markup | None:
    """Return a source's name; its place and how it was read stand in the list of sources."""
    return el("span", f" [{source.title}]", class_="lw-from") if source else None


def _line(line: Line) -> Markup:
    name = join(line.label, " ", _symbol(line.symbol)) if line.symbol else join(line.label)
    sums = (
        el(
            "span",
            el("span", "= ", powers_html(line.formula, symbols=True), class_="lw-formula"),
            el("span", "= ", powers_html(line.numbers), class_="lw-numbers"),
            el("span", "= ", el("b", line.value), class_="lw-value"),
            class_="lw-sum",
        )
        if line.formula
        else el("span", el("b", line.value), class_="lw-sum lw-value")
    )
    return el(
        "li",
        el("span", name, class_="lw-name"),
        sums,
        el("span", line.text, _from(line.source), class_="lw-says"),
    )


_POWER = re.compile(r"\^\{([^{}]*)\}")
_SUBSCRIPT = re.compile(r"(\w+?)_(\w+)")


@cache
def _symbol(text: str) -> Markup:
    base, _, below = text.partition("_")
    return el("var", base, el("sub", below) if below else None)


def powers_html(text: str, *, symbols: bool = False) -> Markup:
    """Return a written formula with its powers raised and the symbols' indices lowered."""
    parts: list[object] = []
    for place, piece in enumerate(_POWER.split(text)):
        inner: object = _indexed(piece) if symbols else piece
        parts.append(el("sup", inner) if place % 2 else inner)
    return join(*parts)


@cache
def _indexed(text: str) -> Markup:
    parts: list[object] = []
    last = 0
    for match in _SUBSCRIPT.finditer(text):
        parts += [text[last : match.start()], match.group(1), el("sub", match.group(2))]
        last = match.end()
    return join(*parts, text[last:])
