"""The search for a fault as lists to read without a script and to print."""

from collections.abc import Mapping
from functools import partial

import calc
from calc.faults import graph
from calc.faults.graph import Step, Symptom, Turn
from calc.faults.walk import Values, bands
from calc.faults.words import amount, meter, said, setting
from calc.render.html import Markup, el, join
from calc.worksheet.formula import work

SHARED = {
    "run": "Lost on the way, a part of several searches",
    "main": "The main joints at real load, a part of several searches",
    "bank": "The bank, a part of several searches",
}


def trees_html() -> Markup:
    """Return every symptom's steps, those that several share, and the repairs, each folded.

    Readings are those of the figures the worksheet opens with.
    """
    return el(
        "div",
        *(_symptom(symptom) for symptom in Symptom),
        *(_list(name, title, Symptom.FLICKERS, ()) for name, title in SHARED.items()),
        _repairs(),
        class_="lw-fault-tree",
    )


def _symptom(symptom: Symptom) -> Markup:
    way_in = graph.way_in(symptom)
    said_too = f"{', '.join(way_in.called)}."
    before = (
        el("p", el("strong", "Also called: "), said_too),
        el("p", el("strong", "First of all. "), way_in.safety),
    )
    return _list(symptom, way_in.about, symptom, before)


def _list(file: str, title: str, symptom: Symptom, before: tuple[Markup, ...]) -> Markup:
    values = calc.calculate("find-fault", symptom=symptom).values
    names = graph.steps_of(file)
    tree = el(
        "details",
        el("summary", title),
        *before,
        el("ol", *(_step(graph.step(name), symptom, values) for name in names)),
    )
    return el("section", tree, data_search_exclude=True)


def _step(step: Step, symptom: Symptom, values: Values) -> Markup:
    charging = graph.way_in(symptom).charging
    probes, state = meter(step, charging), setting(step, charging)
    parts = [el("strong", f"{step.text}{'.' if step.measure else ''}")]
    if step.reads:
        expected = amount(float(work(step.expects, values)), step.reads)
        parts.append(join(f" {state} {probes} A sound circuit: ", el("b", expected), "."))
    turn = partial(_turn, step=step, symptom=symptom, values=values)
    offered = (turn(one) for one in step.turns if not one.old)
    return el("li", *parts, el("ul", *offered), id=_anchor(step.id))


def _turn(turn: Turn, *, step: Step, symptom: Symptom, values: Values) -> Markup:
    by_turn: Mapping[str, str] = (
        {band.turn.id: said(band, step.reads) for band in bands(step, values)} if step.reads else {}
    )
    words = f"{by_turn[turn.id]}: {turn.text}" if turn.id in by_turn else turn.text
    return el("li", words, " → ", _leads(turn, step, symptom))


def _leads(turn: Turn, step: Step, symptom: Symptom) -> Markup:
    if turn.found:
        end = graph.end(turn.found)
        return join(el("a", end.cause, href=f"#{_anchor(turn.found)}"), ".")
    if turn.to.startswith(graph.SHARED):
        shared = turn.to.removeprefix(graph.SHARED)
        if step.id.split(".")[0] not in SHARED:
            return _to(graph.way_in(symptom).after[shared], symptom)
        ways_in = [graph.way_in(one) for one in Symptom]
        after = {way_in.about: way_in.after.get(shared) for way_in in ways_in}
        ways = [join(about, ": ", _to(to)) for about, to in after.items() if to]
        return join("back to the search: ", *(join(way, "; ") for way in ways[:-1]), ways[-1])
    return _to(turn.to, step.id.split(".")[0])


def _to(name: str, here: str = "") -> Markup:
    """Return a link to a step by its number in its list, and the list's name if it is another."""
    file = name.split(".")[0]
    number = graph.steps_of(file).index(name) + 1
    title = SHARED.get(file) or graph.way_in(Symptom(file)).about
    words = f"step {number}" if file == here else f"step {number} of “{title}”"
    return el("a", words, href=f"#{_anchor(name)}")


def _anchor(name: str) -> str:
    return f"fault-{name.replace('.', '-')}"


def _repairs() -> Markup:
    return el(
        "details",
        el("summary", "Causes and repairs"),
        el("dl", *(_repair(name) for name in graph.ends()), class_="lw-results"),
        data_search_exclude=True,
    )


def _repair(name: str) -> Markup:
    end = graph.end(name)
    titles = ", ".join(calc.find(sheet).title for sheet in end.prevents)
    prevents = f" So that it does not come back: {titles}." if titles and not end.clear else ""
    said_ = f"{end.fix}. {end.repair}{prevents}"
    return el("div", el("dt", end.cause), el("dd", said_), id=_anchor(name))
