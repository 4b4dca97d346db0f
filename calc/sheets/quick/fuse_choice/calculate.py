"""fuse-choice from its fields: the cable as laid, its fuse, and what would let one fit."""

from dataclasses import dataclass

from calc.electrical.ampacity import RuleSet, Surroundings, insulation_rating
from calc.electrical.cable import cable
from calc.electrical.conductors import GaugeReading
from calc.electrical.protection import Protection, remedies, select_fuse
from calc.judge import Change
from calc.judge.remedies import Remedy


@dataclass(frozen=True, kw_only=True)
class FuseChoice:
    """The fuse for a wire and a continuous load; `remedies` are for where none fits."""

    protection: Protection
    remedies: tuple[Remedy[Change, Protection], ...]


def calculate(
    *,
    current: float,
    conductor: str,
    insulation: str,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    voltage: float,
    fault_current: float,
    rule_set: RuleSet,
    gauge_reading: GaugeReading,
    terminals: float | None,
) -> FuseChoice:
    """Return the fuse for a wire and a continuous `current` [A], or the reason there is none.

    `insulation` by its name, `ambient` [°C], `voltage` [V] the highest on the circuit,
    `fault_current` [A], `terminals` [°C] the rating of the weakest. Raises NotCovered where the rule set has no figure.
    """
    laid = cable(
        conductor=conductor,
        insulation=insulation_rating(insulation),
        surroundings=surroundings,
        bundled=bundled,
        ambient=ambient,
        max_voltage=voltage,
        rule_set=rule_set,
        gauge_reading=gauge_reading,
    )
    found = select_fuse(
        cable=laid, current=current, fault_current=fault_current, terminals=terminals
    )
    return FuseChoice(protection=found, remedies=() if found.fuse is not None else remedies(found))
