"""One circuit, worked in every sheet that can: conductor, fuse and judgement are the same.

A circuit is drawn (current, length, size, insulation, place, bundle, air, voltage, fault level) and
goes through wire-drop, wire-size, fuse-choice, watts-to-amps, inverter-size, remote-switch and
alternator-charge. Where two of them know the same facts of it, the same rules fire. And more of
what is hard on a circuit never gets it a better verdict.
"""

from typing import NamedTuple

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.electrical.ampacity import insulations
from calc.electrical.conductors import conductors
from calc.electrical.rules import cable, protection, single_cable
from calc.judge import Level
from tests.properties.inputs import SLACK, tried, worked

CHARGED = 14.6 / 12  # a 12 V bank of LFP while it charges, others in proportion
NO_FAULT = "1 A"  # which every family of fuses breaks

# What is judged of a conductor and its fuse before the fault at the fuse is known
CONDUCTOR = {
    rule.id: rule.level
    for rule in (
        protection.WINDOW_CLOSED,
        protection.WINDOW_NARROW,
        protection.NO_RATING_BETWEEN,
        *protection.HEAT,
        protection.ONLY_AS_PRINTED,
        protection.NOTHING_UNLESS_PRINTED,
        protection.WARM_AIR_DERATES,
        cable.BUNDLE_BY_PRUDENCE,
        cable.BELOW_TABLE,
        cable.ONLY_IN_SHEATH,
        cable.FACTOR_NOT_PRINTED,
        cable.COLUMN_NOT_PRINTED,
        cable.BEYOND_ROWS,
    )
}
ORDER = (Level.FINE, Level.CAUTION, Level.STOP)


class Circuit(NamedTuple):
    """A circuit of a bank, as it is typed."""

    current: float
    length: float
    conductor: str
    insulation: str
    surroundings: str
    bundled: int
    ambient: float
    voltage: float
    fault: float
    terminals: str

    @property
    def laid(self) -> dict[str, str]:
        """Where it runs, in the words of every sheet."""
        return {
            "insulation": self.insulation,
            "surroundings": self.surroundings,
            "bundled": f"{self.bundled}",
            "ambient": f"{self.ambient} °C",
        } | ({"terminals": self.terminals} if self.terminals else {})

    @property
    def run(self) -> dict[str, str]:
        """What it carries over which way."""
        return {
            "current": f"{self.current} A",
            "length": f"{self.length} m",
            "voltage": f"{self.voltage} V",
        }

    def dropped(self, **change: str) -> calc.Answer | None:
        return worked("wire-drop", {**self.run, **self.laid, "conductor": self.conductor, **change})

    def sized(self, **change: str) -> calc.Answer | None:
        return worked("wire-size", {**self.run, **self.laid, **change})

    def fused(self, **change: str) -> calc.Answer | None:
        given = {
            "current": f"{self.current} A",
            "voltage": f"{CHARGED * self.voltage!r} V",
            "fault_current": NO_FAULT,
            "fuse_place": "at-the-battery",
            "conductor": self.conductor,
        }
        return worked("fuse-choice", {**given, **self.laid, **change})


NAMES = [one.name for one in conductors()]


@st.composite
def circuits(draw: st.DrawFn, *, most: float = 500.0) -> Circuit:
    """Draw a circuit. Small and large currents are as likely as each other."""
    return Circuit(
        current=round(0.5 * (most / 0.5) ** draw(st.floats(0, 1)), 2),
        length=round(draw(st.floats(0.2, 12)), 2),
        conductor=draw(st.sampled_from(NAMES)),
        insulation=draw(st.sampled_from(insulations())),
        surroundings=draw(st.sampled_from(["outside-engine-space", "inside-engine-space"])),
        bundled=draw(st.sampled_from([1, 2, 2, 2, 3, 4, 6, 8, 24, 25, 40])),
        ambient=draw(st.sampled_from([-40, -10, 20, 30, 30, 30, 40, 50, 51, 58, 70])),
        voltage=draw(st.sampled_from([12.0, 24.0, 48.0])),
        fault=draw(st.sampled_from([200.0, 900.0, 1500.0, 4000.0, 15000.0])),
        terminals=draw(st.sampled_from(["", "", "75 °C", "90 °C", "105 °C"])),
    )


def on_conductor(answer: calc.Answer) -> set[str]:
    """Return the ids of the rules on a conductor and its fuse that fire."""
    return set(CONDUCTOR) & set(answer.rules)


def level(answer: calc.Answer | None) -> Level:
    """Return the worst that is said of a conductor and its fuse; what is refused is a stop."""
    if answer is None:
        return Level.STOP
    levels = {CONDUCTOR[rule] for rule in on_conductor(answer)}
    return max(levels & set(ORDER), key=ORDER.index, default=Level.FINE)


@given(circuits())
@tried(25)
def test_wire_drop_and_fuse_choice_judge_a_conductor_alike(circuit):
    dropped, fused = circuit.dropped(), circuit.fused()
    assert (dropped is None) is (fused is None), circuit
    assume(dropped is not None)
    assert on_conductor(dropped) == on_conductor(fused), circuit
    for name in ("ampacity", "lowest", "highest", "fuse", "bundle_factor", "warm"):
        assert dropped.values[name] == fused.values[name], (name, circuit)
    if level(fused) is Level.STOP:
        assert dropped.verdict == fused.verdict == "stop"


@given(circuits())
@tried(25)
def test_whatever_the_fault_the_conductor_is_judged_alike(circuit):
    """A fault takes families away, never the wire's own limits; what it cannot break is worse."""
    weak, strong = circuit.fused(), circuit.fused(fault_current=f"{circuit.fault} A")
    assume(weak is not None)
    assert strong.values["ampacity"] == weak.values["ampacity"]
    assert ORDER.index(level(strong)) >= ORDER.index(level(weak)) or level(weak) is Level.CAUTION
    if "fuse.window-closed" in weak.rules:
        assert strong.verdict == "stop"


@given(circuits(), st.sampled_from(["AWG", "mm2"]))
@tried(25)
def test_what_wire_size_chooses_passes_in_wire_drop_and_fuse_choice(circuit, series):
    sized = circuit.sized(series=series)
    assume(sized is not None and sized.values["conductor"] is not None)
    name = sized.values["conductor"]
    dropped, fused = circuit.dropped(conductor=name), circuit.fused(conductor=name)
    assert on_conductor(sized) == on_conductor(dropped) == on_conductor(fused), circuit
    assert sized.verdict == dropped.verdict != "stop", circuit
    assert sized.values["drop"] == dropped.values["drop"]
    for one in ("fuse", "ampacity", "warm"):
        assert sized.values[one] == dropped.values[one] == fused.values[one], (one, circuit)


@given(circuits(), st.sampled_from(["AWG", "mm2"]))
@tried(25)
def test_a_thinner_conductor_than_wire_size_chooses_fails_in_wire_drop(circuit, series):
    """It loses too much, or no fuse fits it, or its copper is too hot for the terminals."""
    sized = circuit.sized(series=series)
    assume(sized is not None and sized.values["conductor"] is not None)
    named = [one.name for one in conductors() if one.series == series]
    names = [one for one in named if one != "3 AWG"]  # hardly sold as flexible cable
    place = names.index(sized.values["conductor"])
    assume(place > 0)
    dropped = circuit.dropped(conductor=names[place - 1])
    thin = {"cable.below-table"} & set(dropped.rules)  # sizes are chosen by what is published
    first = {"18 AWG", "0.75 mm2"} & {names[place]}  # thinner ones are for signals
    hot = {"copper.hot-at-lugs"} & set(dropped.rules)
    assert dropped.verdict != "fine" or thin or first or hot, circuit
    if circuit.terminals == "" and not (thin or first):
        lost = dropped.values["drop"]
        over = lost is None or lost > dropped.values["allowed"] / SLACK
        assert over or dropped.values["fuse"] is None, circuit


@given(circuits(most=1000.0))
@tried(25)
def test_one_cable_carries_it_or_not_whichever_sheet_is_asked(circuit):
    """33 CFR 183.425 table 5 with 105 °C insulation, in free air, and a fuse that fits."""
    volts, watts = f"{circuit.voltage} V", f"{circuit.current * circuit.voltage!r} W"
    assume(circuit.current * circuit.voltage <= 20_000)
    asked = {
        "watts-to-amps": {"power": watts, "voltage": volts},
        "remote-switch": {"power": watts, "voltage": volts, "kind": "DC"},
        "inverter-size": {
            "running": watts,
            "surge": watts,
            "efficiency": "100 %",
            "voltage": volts,
            "lowest_voltage": volts,
        },
    }
    found = {name: worked(name, texts) for name, texts in asked.items()}
    several = {rule.id for rule in single_cable.PARALLEL}
    said = {name: several & set(one.rules) for name, one in found.items() if one}
    assert len({frozenset(rules) for rules in said.values()}) == 1, (said, circuit)
    too_much = bool(said["watts-to-amps"])
    short = {"current": f"{circuit.current} A", "length": "1 cm", "voltage": volts}
    sized = worked("wire-size", {**short, "insulation": "105 C"})
    assert (sized.values["conductor"] is None) is too_much, circuit


@given(circuits(), st.sampled_from(["AWG", "mm2"]))
@tried(25)
def test_the_wires_of_a_switch_are_those_of_wire_size(circuit, series):
    """Without a marking, so 60 °C; 3 % for a line, 4 % for a coil: 92 % less 1.1 times 80 %."""
    coil = min(circuit.current, 10.0)
    found = worked(
        "remote-switch",
        {
            "power": f"{circuit.current * circuit.voltage!r} W",
            "voltage": f"{circuit.voltage} V",
            "kind": "DC",
            "load": "coil",
            "distance": f"{circuit.length} m",
            "coil_current": f"{coil} A",
            "control_voltage": f"{circuit.voltage} V",
            "series": series,
            "lowest": "92 %",
            "pull_in": "80 %",
        },
    )
    assume(found is not None)
    given = {"length": f"{circuit.length} m", "voltage": f"{circuit.voltage} V", "series": series}
    plain = {**given, "insulation": "60 C"}
    line = worked("wire-size", {**plain, "current": f"{circuit.current} A"})
    assert found.values["line_conductor"] == line.values["conductor"], circuit
    wire = worked("wire-size", {**plain, "current": f"{coil} A", "limit": "4 %"})
    assert found.values["control_conductor"] == wire.values["conductor"], circuit
    assert found.values["control_fuse"] == wire.values["fuse"], circuit


@given(circuits(most=150.0))
@tried(25)
def test_the_run_to_a_charger_is_judged_as_in_fuse_choice(circuit):
    laid = {name: text for name, text in circuit.laid.items() if name != "terminals"}
    run = {**laid, "conductor": circuit.conductor}
    found = worked(
        "alternator-charge",
        {
            **run,
            "method": "charger",
            "charger_limit": f"{max(circuit.current, 1.0)} A",
            "length": f"{circuit.length} m",
            "fault_current": f"{circuit.fault} A",
        },
    )
    assume(found is not None and found.values["cable_current"] is not None)
    assume(0.01 <= found.values["cable_current"] <= 600)
    fused = worked(
        "fuse-choice",
        {
            **run,
            "current": f"{found.values['cable_current']!r} A",
            "voltage": f"{found.values['top_voltage']!r} V",
            "fault_current": f"{circuit.fault} A",
            "fuse_place": "at-the-battery",
        },
    )
    shared = {use.rule.id for use in calc.find("alternator-charge").uses} & set(CONDUCTOR)
    assert on_conductor(found) == on_conductor(fused) & shared, circuit
    for name in ("fuse", "ampacity", "highest", "lowest"):
        assert found.values[name] == fused.values[name], (name, circuit)


HARDER = {
    "current": lambda c, k: c._replace(current=round(c.current * (1 + k), 3)),
    "length": lambda c, k: c._replace(length=round(c.length * (1 + k), 3)),
    "ambient": lambda c, k: c._replace(ambient=c.ambient + 20 * k),
    "bundled": lambda c, k: c._replace(bundled=int(c.bundled + 1 + 20 * k)),
    "surroundings": lambda c, _: c._replace(surroundings="inside-engine-space"),
}


@given(circuits(), st.sampled_from(sorted(HARDER)), st.floats(0.001, 1.5))
@tried(60)
def test_what_is_harder_on_a_circuit_never_gets_it_a_better_verdict(circuit, what, how_much):
    harder = HARDER[what](circuit, how_much)
    before, after = circuit.dropped(), harder.dropped()
    assume(before is not None)
    grave = ORDER.index(Level(after.verdict)) if after else len(ORDER)
    assert grave >= ORDER.index(Level(before.verdict)), (circuit, harder)
    fused = circuit.fused(), harder.fused()
    assert ORDER.index(level(fused[1])) >= ORDER.index(level(fused[0])), (circuit, harder)
    sized = circuit.sized(), harder.sized()
    if sized[0] is not None and sized[0].verdict == "stop":
        assert sized[1] is None or sized[1].verdict == "stop", (circuit, harder)
