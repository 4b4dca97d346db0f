"""A review of twelve circuits in a loop, without a sheet, a text or a page: the rules stand alone.

The levels are what a careful electrician gives (common practice, no source); each sum that decides
one is worked by hand beside it.
"""

from typing import NamedTuple

import pytest

from calc.electrical.ampacity import RuleSet, Surroundings
from calc.electrical.cable import cable
from calc.electrical.conductors import GaugeReading
from calc.electrical.protection import changed, select_fuse
from calc.electrical.rules import protection as judged
from calc.judge import Level, Rule, fired, verdict

RULES = tuple(rule for rule in vars(judged).values() if isinstance(rule, Rule))


class Circuit(NamedTuple):
    """A circuit of a van: its steady current [A], its conductor, and how it is laid."""

    name: str
    current: float
    conductor: str
    insulation: float = 105.0
    bundled: float = 2.0
    ambient: float = 30.0
    surroundings: Surroundings = Surroundings.OUTSIDE
    max_voltage: float = 14.6
    fault_current: float = 900.0


# 33 CFR 183.425 table 5, 105 °C: 18 AWG 20 A, 16 AWG 25 A, 14 AWG 35 A, 12 AWG 45 A, 10 AWG 60 A,
# 8 AWG 80 A, 6 AWG 120 A, 4 AWG 160 A, 1/0 AWG 285 A; 60 °C: 16 AWG 15 A, 8 AWG 40 A.
CIRCUITS = {
    # 1.25 × 6 = 7.5 A
    Circuit("fridge", 6.0, "14 AWG"): "",
    # 1.25 × 2 = 2.5 A; 16 AWG is the thinnest that may run alone
    Circuit("lights", 2.0, "16 AWG"): "",
    Circuit("lights, too thin to run alone", 2.0, "18 AWG"): "",
    # 1.25 × 7 = 8.75 A
    Circuit("pump", 7.0, "12 AWG"): "",
    # 1.25 × 30 = 37.5: 40 A, which 60 °C insulation (40 A at 8 AWG) would carry as well
    Circuit("charger from the alternator", 30.0, "8 AWG"): "",
    # 40 A on 10 AWG: 1.25 × 40 = 50 A is within 60 A
    Circuit("charger on thin wire of 105 °C", 40.0, "10 AWG"): "",
    # 1.25 × 50 = 62.5 A against the 55 A of 60 °C insulation
    Circuit("heater on soft insulation", 50.0, "8 AWG", insulation=60.0): "fuse.window-narrow",
    # 1.25 × 193 = 241 A: 250 A is within 285 A, and copper at 0.68² of the way to 105 °C
    Circuit("inverter", 193.0, "1/0 AWG", fault_current=3000.0): "",
    # 1.25 × 300 = 375 A against 285 A
    Circuit("inverter on too thin a cable", 300.0, "1/0 AWG"): "fuse.window-closed",
    # the engine space takes 15 %: 0.85 × 80 = 68 A holds 1.25 × 50 = 62.5 A, but not a fuse of 70 A
    Circuit("winch", 50.0, "8 AWG", surroundings=Surroundings.INSIDE): "fuse.no-rating-between",
    # no family breaks 100 kA
    Circuit("a bank without end", 10.0, "8 AWG", fault_current=100_000.0): "fuse.no-family",
    # 26 together: 0.4 × 45 = 18 A holds no 1.25 × 20 = 25 A
    Circuit("loom", 20.0, "12 AWG", bundled=26.0): "fuse.window-closed",
}


def protection_of(circuit: Circuit):
    """Return the circuit's protection, by the one function that chooses a fuse."""
    laid = cable(
        conductor=circuit.conductor,
        insulation=circuit.insulation,
        surroundings=circuit.surroundings,
        bundled=circuit.bundled,
        ambient=circuit.ambient,
        max_voltage=circuit.max_voltage,
        rule_set=RuleSet.CFR33,
        gauge_reading=GaugeReading.AWG,
    )
    return select_fuse(cable=laid, current=circuit.current, fault_current=circuit.fault_current)


def test_there_are_twelve_circuits():
    assert len(CIRCUITS) == 12
    assert len(RULES) > 12


@pytest.mark.parametrize(
    ("circuit", "expected"), CIRCUITS.items(), ids=lambda one: getattr(one, "name", "")
)
def test_each_circuit_gets_the_judgement_of_the_rules_alone(circuit, expected):
    found = fired(RULES, protection_of(circuit))
    grave = [rule.id for rule in found if rule.level in (Level.STOP, Level.CAUTION)]
    if expected:
        assert expected in grave
        assert verdict(found) is next(rule.level for rule in found if rule.id in grave)
    else:
        assert grave == []
        assert verdict(found) is Level.FINE


def test_a_remedy_found_without_a_sheet_is_a_remedy():
    tried = 0
    for circuit in CIRCUITS:
        protection = protection_of(circuit)
        for rule in fired(RULES, protection):
            if rule.mend and (change := rule.mend(protection)):
                tried += 1
                assert not rule.when(changed(protection, change)), (circuit.name, rule.id, change)
    assert tried >= 5
