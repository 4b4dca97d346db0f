"""The search hangs together: every way ends, nothing is out of reach, no reading falls between."""

import re
from collections.abc import Iterator

import pytest

import calc
from calc.faults import graph
from calc.faults.graph import End, Step, Turn
from calc.faults.trail import LONGEST_PATH
from calc.faults.walk import follow, limits
from calc.judge import Level
from calc.sources import SOURCES

SHEET = calc.find("find-fault")
SYMPTOMS = tuple(option.id for option in SHEET.field("symptom").options)
FILES = (*SYMPTOMS, "run", "main", "bank")
STEPS = [graph.step(name) for file in FILES for name in graph.steps_of(file)]
MEASURED = [step for step in STEPS if step.reads]
EACH = pytest.mark.parametrize("symptom", SYMPTOMS)


def ways(symptom: str) -> Iterator[tuple[tuple[tuple[Step, Turn], ...], End]]:
    """Yield every way from a symptom to an end. A circle would be met on the way, and fails."""

    def on(step: Step, taken: tuple[tuple[Step, Turn], ...]):
        assert step.id not in [before.id for before, _ in taken], f"round in a circle at {step.id}"
        for turn in step.turns:
            further, end = follow(symptom, turn)
            if end:
                yield (*taken, (step, turn)), end
            else:
                yield from on(further, (*taken, (step, turn)))

    yield from on(graph.step(graph.way_in(symptom).start), ())


def path_of(symptom: str, taken) -> str:
    return ".".join([symptom, *(turn.id for _, turn in taken)])


@EACH
def test_every_way_ends_and_none_goes_round_in_a_circle(symptom):
    found = list(ways(symptom))
    assert found
    assert max(len(taken) for taken, _ in found) <= 18


@EACH
def test_every_way_fits_into_its_link(symptom):
    for taken, _ in ways(symptom):
        path = path_of(symptom, taken)
        assert len(path) <= LONGEST_PATH
        assert SHEET.field("path").read(path).link == path


def test_no_step_and_no_end_is_out_of_reach():
    steps = {step.id for symptom in SYMPTOMS for taken, _ in ways(symptom) for step, _ in taken}
    ends = {taken[-1][1].found for symptom in SYMPTOMS for taken, _ in ways(symptom)}
    assert steps == {step.id for step in STEPS}
    assert ends == set(graph.ends())


@EACH
def test_a_search_may_end_without_a_cause(symptom):
    assert any(end.clear for _, end in ways(symptom))


@EACH
def test_the_first_step_of_every_search_is_about_danger(symptom):
    first = graph.step(graph.way_in(symptom).start)
    assert first.ask
    led = [follow(symptom, turn) for turn in first.turns]
    assert any((step and step.danger) or (end and end.danger) for step, end in led)
    assert graph.way_in(symptom).safety


@pytest.mark.parametrize("step", STEPS, ids=lambda step: step.id)
def test_a_step_asks_or_measures_and_each_of_its_turns_leads_to_one_thing(step):
    assert bool(step.ask) is not bool(step.measure)
    assert bool(step.measure) is bool(step.reads) is bool(step.expects) is bool(step.state)
    assert bool(step.measure) is (bool(step.red and step.black) is not bool(step.clamp))
    assert step.why
    ids = [turn.id for turn in step.turns]
    assert len(ids) == len(set(ids))
    for place, turn in enumerate(step.turns):
        assert re.fullmatch(r"[a-z]+", turn.id)
        assert bool(turn.to) is not bool(turn.found)
        assert turn.text
        last = place == len(step.turns) - 1
        assert bool(turn.below) is (bool(step.reads) and not last)


@pytest.mark.parametrize("step", STEPS, ids=lambda step: step.id)
def test_only_what_is_mended_or_made_safe_has_a_single_way_on(step):
    assert len(step.turns) > 1 or step.danger


def test_every_place_state_and_limit_that_is_named_has_its_words_and_none_is_left_over():
    clamps, places, states = (graph.words(name, False) for name in ("clamps", "places", "settings"))
    assert {step.clamp for step in MEASURED} - {""} == set(clamps)
    assert {place for step in MEASURED for place in (step.red, step.black)} - {""} == set(places)
    assert {step.state for step in MEASURED} == set(states)
    assert {name for step in MEASURED for name in limits(step)} == set(graph.criteria())
    for name, words in graph.words("places", True).items():
        assert "device" not in words or name not in ("far_plus", "far_minus")


def test_every_limit_says_why_and_where_from():
    for criterion in graph.criteria().values():
        assert criterion.why.endswith(".")
        assert criterion.source in SOURCES
        assert criterion.label[0].islower()


@pytest.mark.parametrize("name", graph.ends())
def test_every_end_says_the_cause_the_repair_and_what_prevents_it(name):
    end = graph.end(name)
    assert not end.cause.endswith(".") and not end.fix.endswith(".")
    assert end.repair.endswith(".")
    assert set(end.prevents) <= set(calc.worksheets())
    assert end.prevents or name == "mains"
    assert not end.then or end.then in SYMPTOMS
    assert end.clear is end.cause.startswith("No fault")


@EACH
def test_every_end_is_reached_through_the_worksheet_with_its_repair(symptom):
    """Fine is a check that finds nothing, or what is usual; what was too hot is a stop."""
    for taken, end in list(ways(symptom))[::3]:
        answer = calc.work("find-fault", {"symptom": symptom, "path": path_of(symptom, taken)})
        assert (answer["cause"], answer["remedy"]) == (end.cause, end.repair)
        assert answer["step"] == end.fix
        fine = end.usual or (end.clear and symptom == "check")
        clear = Level.FINE if fine else Level.CAUTION
        smoked = not end.clear and any(turn.burns for _, turn in taken)
        assert answer.verdict == (Level.STOP if end.danger or smoked else clear)
        assert [move.sheet for move in answer["prevents"]] == list(end.prevents)
        assert end.cause in answer.sentence
