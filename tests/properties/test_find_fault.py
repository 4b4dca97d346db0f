"""What must hold of the search for a fault in every sane van, at every step of every path."""

from collections.abc import Iterator
from contextlib import suppress
from typing import Any

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.electrical.ampacity import table_ampacity
from calc.electrical.cable import UNMARKED_INSULATION
from calc.electrical.conductors import GaugeReading
from calc.electrical.contact import RiseOver, measured_joint
from calc.electrical.rules import contact as rules
from calc.electrical.sound_parts import PLUG_FUSE, Part, SoundPart, sound_fuse, sound_joint
from calc.energy.battery import Chemistry
from calc.faults.graph import Symptom, way_in
from calc.faults.model import Load, searched_bank, searched_run, sound_circuit
from calc.faults.search import FaultSearch, TooLittle, fault_search
from calc.faults.walk import bands, limits, turn_for
from calc.units.constants import HOUR
from calc.worksheet.formula import work
from tests.contract.trails import trails
from tests.properties.inputs import tried
from tests.unit.fault_van import INVERTER, follow
from tests.unit.test_find_fault_seeded import SOUND

SOUND_TURNS = {"ok", "t", "good", "live"}
COPPER = {"12 AWG": 5.21, "6 AWG": 1.30, "4 AWG": 0.82, "2 AWG": 0.52, "2/0 AWG": 0.256}
"""Copper at 20 °C [ohm/km], plain, by its area."""


@st.composite
def sane_vans(draw) -> dict[str, Any]:
    """Draw a run whose cable, fuse and bank suit its load, by figures in SI."""
    size = draw(st.sampled_from(list(COPPER)))
    most = table_ampacity(size, insulation=UNMARKED_INSULATION, gauge_reading=GaugeReading.AWG)
    assert most is not None
    current = draw(st.floats(5, 0.75 * most))
    system = draw(st.sampled_from([12.0, 24.0, 48.0]))
    allowed = 0.015 * system / (1.3 * COPPER[size] * 1e-3 * current)
    return {
        "system": system,
        "chemistry": draw(st.sampled_from(list(Chemistry))),
        "current": current,
        "charger": draw(st.floats(5, current)),
        "conductor": size,
        "length": min(allowed, draw(st.floats(0.5, 8))),
        "rated": 1.3 * current,
        "heaviest": draw(st.floats(1, 4)) * current,
        "capacity": max(100.0, 4 * current) * HOUR,
        "joint": draw(st.floats(0.02e-3, 0.5e-3)),
        "joints": float(draw(st.integers(3, 6))),
        "shunt": draw(st.floats(0.05e-3, 0.2e-3)),
    }


def standing(van: dict[str, Any]) -> Iterator[FaultSearch]:
    """Yield the search at every step that is reached, with enough current to tell anything."""
    bank = searched_bank(
        system=van["system"], chemistry=van["chemistry"], capacity=van["capacity"], blocks=1.0,
        resistance=None, charge_voltage=None,
    )  # fmt: skip
    run = searched_run(
        conductor=van["conductor"], length=van["length"], temperature=30.0, rated=van["rated"],
        joint=van["joint"], joints=van["joints"], shunt=van["shunt"], heaviest=van["heaviest"],
    )  # fmt: skip
    load = Load(current=van["current"], power=None)
    for path in trails():
        symptom = Symptom(path.split(".")[0])
        circuit = sound_circuit(
            bank=bank, run=run, load=load, charger=van["charger"],
            charges=way_in(symptom).charging,
        )  # fmt: skip
        with suppress(TooLittle):
            found = fault_search(
                symptom=symptom, path=path, circuit=circuit, standby=0.1, idle=1.2, limit=0.03,
                cutoff=10.5 * van["system"] / 12, heaviest=van["heaviest"],
            )  # fmt: skip
            if found.at.step is not None and found.at.step.reads:
                yield found


@given(sane_vans())
@tried(15)
def test_what_a_sound_circuit_shows_lies_in_the_branch_that_is_called_sound(van):
    for found in standing(van):
        step = found.at.step
        assert len(SOUND_TURNS & {turn.id for turn in step.turns}) == 1, step.id
        expected = float(work(step.expects, found.values))
        assert turn_for(step, expected, found.values).id in SOUND_TURNS, step.id


def part_at(found: FaultSearch) -> SoundPart | None:
    """Return what joint heat holds the part between a step's probes to, where it is one part."""
    assert found.at.step is not None
    names = set(limits(found.at.step))
    rated = found.circuit.run.rated
    if "fuse_limit" in names:
        return sound_fuse(Part.FUSE, rated)
    if "terminal_limit" in names and rated <= PLUG_FUSE:
        return sound_joint(Part.PLUG)
    return sound_joint(Part.BOLTED) if {"terminal_limit", "joint_limit"} & names else None


@given(sane_vans(), st.floats(0.2, 0.9999))
@tried(15)
def test_no_part_that_joint_heat_condemns_passes_its_own_step(van, share):
    compared = 0
    for found in standing(van | {"joints": 3.0}):
        step, part = found.at.step, part_at(found)
        if part is None or step.id in ("dead.post", "dead.fuse"):
            continue  # those two look for a break, and not for a bad joint
        passes = next(b for b in bands(step, found.values) if b.turn.id in SOUND_TURNS)
        flow = found.circuit.readings.flow
        bolted = part.part is Part.BOLTED
        judged = measured_joint(
            sound=part, drop=share * passes.high, current=flow,
            full_current=found.full_current if bolted else flow,
            good_drop=found.circuit.run.joint * flow if bolted else None, rise=None,
            rise_over=RiseOver.AIR, voltage=van["system"], temperature=60.0,
        )  # fmt: skip
        said = {rule.id for rule in rules.JUDGEMENTS if rule.when(judged)}
        # A reading that is too small, for the load or for any joint, condemns no part.
        too_little = {"contact.reading-too-small", "contact.less-than-any-joint"}
        assert said <= too_little, (step.id, said)
        compared += 1
    assert compared > 5


PARTS = {
    "minus post": "loose-minus", "plus post": "loose-plus", "ground": "ground",
    "between": "middle-joint", "terminal": "far-joint", "minus terminal": "far-joint",
}  # fmt: skip


@given(st.sampled_from(list(PARTS)), st.floats(0.01, 5), st.floats(30, 149))
@tried(20)
def test_a_main_joint_that_joint_heat_condemns_is_found_at_any_current_that_is_enough(
    part, milliohm, amps
):
    """The bank gives 149 A; what is measured at less is judged at that."""
    texts = INVERTER.texts | {"load": f"{amps!r} A"}
    extra = {part: milliohm * 1e-3}
    van = INVERTER.__class__(**{**vars(INVERTER), "texts": texts, "amps": amps, "extra": extra})
    flows = abs(van.network("flow", False).currents["10"])
    assume(flows > 30)
    ohms = van.good_joint + extra[part]
    judged = calc.work(
        "joint-heat",
        {
            "probed": "bolted",
            "drop": f"{ohms * flows!r} V",
            "current": f"{flows!r} A",
            "full_current": "149 A",
            "good_drop": f"{van.good_joint * flows!r} V",
        },
    )
    assume(judged.verdict != "fine")
    assert follow(van, "flickers", SOUND)[0] == PARTS[part]
