"""What a meter should show, and where a reading begins to tell: nothing falls between."""

from itertools import pairwise
from math import inf, nextafter

import pytest

import calc
from calc.faults import graph
from calc.faults.graph import Reads, Step, Symptom
from calc.faults.model import Load, operating_point, searched_bank, searched_run
from calc.faults.walk import bands, limits, turn_for
from calc.faults.words import KINDS
from calc.sources import SOURCES
from calc.units.constants import HOUR
from calc.units.kinds import CHARGE, COUNT, CURRENT, DURATION, RATIO, RESISTANCE, VOLTAGE
from calc.units.quantities import base_quantity, registry
from calc.worksheet.formula import names, work
from tests.contract.samples import answers
from tests.contract.trails import trails
from tests.unit.fault_van import CHARGER, FRIDGE, INVERTER, LARGE

SHEET = calc.find("find-fault")
SYMPTOMS = tuple(Symptom)
FILES = (*SYMPTOMS, "run", "main", "bank")
STEPS = [graph.step(name) for file in FILES for name in graph.steps_of(file)]
MEASURED = [step for step in STEPS if step.reads]


def drawn_figures():
    """Yield the figures of many inputs: usual ones, every limit, and drawn ones."""
    for _, answer in answers("find-fault")[::7]:
        yield answer.result.values


def test_no_reading_falls_between_two_turns_and_none_is_for_two():
    for values in drawn_figures():
        for step in MEASURED:
            found = bands(step, values)
            assert found[0].low == -inf and found[-1].high == inf
            for one, other in pairwise(found):
                assert one.low < one.high == other.low < other.high
            for band in found:
                for reading in (band.low, nextafter(band.high, -inf)):
                    if reading > -inf:
                        assert turn_for(step, reading, values) is band.turn


@pytest.mark.parametrize("van", (FRIDGE, INVERTER, CHARGER, LARGE))
def test_every_turn_of_a_measurement_has_readings_on_a_usual_van(van):
    for symptom in SYMPTOMS:
        answer = calc.work("find-fault", van.texts | {"symptom": symptom})
        for step in MEASURED:
            assert len(bands(step, answer.result.values)) == len(step.turns), step.id


@pytest.mark.parametrize("step", MEASURED, ids=lambda step: step.id)
def test_what_a_sound_circuit_shows_is_not_laid_down_but_worked(step):
    """At least one figure of the reader's own changes it."""
    symptom = "charge" if step.id.startswith(("charge", "flat")) else "flickers"
    usual = calc.work("find-fault", {"symptom": symptom})
    expected = work(step.expects, usual.result.values)
    changes = {
        "load": "3 A", "length": "2 m", "conductor": "6 AWG", "fuse": "20 A", "charger": "15 A",
        "capacity": "90 Ah", "standby": "200 mA", "idle": "2 A", "joint": "0.1 mohm",
        "shunt": "0.2 mohm", "system": "24 V", "chemistry": "LFP",
    }  # fmt: skip
    others = [calc.work("find-fault", {"symptom": symptom, n: t}) for n, t in changes.items()]
    assert any(work(step.expects, other.result.values) != expected for other in others)


SIX_AMPS = Load(current=6.0, power=None)


def point_of(load=SIX_AMPS, charger=None, length=4.5, rated=10.0):
    """Return the load's current and the operating point of the sheet's own circuit."""
    bank = searched_bank(
        system=12.0, chemistry="AGM", capacity=200 * HOUR, blocks=1.0, resistance=None,
        charge_voltage=None,
    )  # fmt: skip
    run = searched_run(
        conductor="12 AWG", length=length, temperature=30.0, rated=rated, joint=0.1e-3, joints=4.0,
        shunt=0.1e-3, heaviest=50.0,
    )  # fmt: skip
    return operating_point(bank=bank, run=run, load=load, charger=charger)


TEXTS = {"joints": "4", "load": "6 A", "length": "4.5 m", "conductor": "12 AWG", "fuse": "10 A"}
PLACES = {"fuse_in": "lug_plus"}


def in_the_circuit(step: Step, point) -> bool:
    ends = {PLACES.get(place, place) for place in (step.red, step.black)}
    return step.reads is Reads.VOLTS and ends <= set(point.voltages) and "rest" not in step.state


@pytest.mark.parametrize("symptom", ("flickers", "charge"))
def test_what_a_sound_circuit_shows_is_what_the_network_has_between_the_probes(symptom):
    """The formula of each step and the places of its probes are two statements of one thing."""
    point = point_of(charger=30.0 if symptom == "charge" else None)[1]
    values = calc.work("find-fault", TEXTS | {"symptom": symptom}).result.values
    compared = 0
    for step in MEASURED:
        if in_the_circuit(step, point) and "charging_to" not in step.expects:
            red, black = (PLACES.get(place, place) for place in (step.red, step.black))
            shown = abs(point.between(red, black))
            by_formula = work(step.expects, values)
            if symptom == "flickers" or step.id.startswith(("run", "charge")):
                assert by_formula == pytest.approx(shown, rel=1e-9, abs=1e-12), step.id
                compared += 1
    assert compared >= 12


def test_a_load_in_watts_takes_the_amps_at_which_its_watts_come_out():
    current, point = point_of(Load(current=None, power=500.0), length=1.0, rated=60.0)
    assert current * point.between("far_plus", "far_minus") == pytest.approx(500.0, rel=1e-12)


KIND_OF = {
    "system": VOLTAGE, "fuse": CURRENT, "charger": CURRENT, "capacity": CHARGE, "standby": CURRENT,
    "idle": CURRENT, "limit": RATIO, "cutoff": VOLTAGE, "hour": DURATION, "day": DURATION,
    "night": DURATION, "last_digit": VOLTAGE, "ampacity": CURRENT, "joint": RESISTANCE,
    "joint_most": VOLTAGE, "terminal_most": VOLTAGE, "fuse_most": VOLTAGE, "glow": VOLTAGE,
    "joints": COUNT,
}  # fmt: skip


@pytest.mark.parametrize("step", MEASURED, ids=lambda step: step.id)
def test_every_limit_has_the_dimension_of_its_reading(step):
    known = {named.id: named.kind for named in SHEET.intermediates if named.kind} | KIND_OF
    values = calc.work("find-fault").result.values

    class Dimensioned(dict):
        def __missing__(self, name):
            if name in known:
                return base_quantity(values[name], known[name])
            return work(graph.criteria()[name].formula, self)

    for formula in filter(None, (step.expects, *(turn.below for turn in step.turns))):
        worked = registry().Quantity(1) * work(formula, Dimensioned())
        assert worked.check(base_quantity(1.0, KINDS[step.reads]).dimensionality), formula


def test_formulas_name_what_there_is():
    known = set(calc.work("find-fault").result.values)
    formulas = [c.formula for c in graph.criteria().values()]
    formulas += [step.expects for step in MEASURED]
    formulas += [turn.below for step in MEASURED for turn in step.turns if turn.below]
    assert {name for text in formulas for name in names(text)} <= known


def test_a_limit_with_a_source_shows_that_source_with_the_step():
    for path in trails():
        answer = calc.work("find-fault", {"symptom": path.split(".")[0], "path": path})
        step = next((step for step in MEASURED if step.text == answer["step"]), None)
        cited = set(answer.result.cited) - {"practice", "ohm"}
        if "rested-lead" in cited:  # each chemistry has its own
            cited = cited - {"rested-lead"} | {"rested-agm"}
        assert {SOURCES[key] for key in cited} <= set(answer.sources), path
        assert step is None or limits(step) or step.expects
