"""How much current a conductor bears, by a named set of published rules.

Both rule sets are written for boats: there is none for camper vans that we may show. Each keeps
its own conditions. Tables are by AWG; a metric size is worked as the next smaller gauge by area.
"""

from dataclasses import dataclass
from functools import cache
from math import inf, sqrt

from calc.electrical.conductors import conductor, gauge_for_area
from calc.tables import table

LAW, ABYC = "33 CFR 183.425", "ABYC E-11"
OUTSIDE, INSIDE = "outside engine space", "inside engine space"
BASE_AMBIENT, ENGINE_AMBIENT = 30.0, 50.0  # °C, both rule sets
PRINTED_ENGINE_FACTOR = 0.85  # 105 °C insulation, 33 CFR 183.425 table 5 note 1, seen in text


class NotCovered(ValueError):
    """The rule set gives no figure; `field` is the input it lacks one for."""

    def __init__(self, field: str, why: str) -> None:
        super().__init__(why)
        self.field = field


@dataclass(frozen=True)
class Ampacity:
    """Corrected ampacity [A] and its parts.

    `row` is the gauge whose row was read, `air` [°C] the temperature taken around the wire, and
    `printed_factor` tells that the factor for it is the rule's own printed one.
    """

    row: str
    table_ampacity: float
    air: float
    printed_factor: bool
    ambient_factor: float
    bundle_factor: float
    ampacity: float


@cache
def _law_rows() -> dict[tuple[str, float], float]:
    return {
        (row["awg"], float(row["insulation_c"])): float(row["ampacity_a"])
        for row in table("ampacity_33cfr183_425").rows
    }


@cache
def insulations() -> tuple[str, ...]:
    """Return the insulation ratings of 33 CFR 183.425 table 5, as choices."""
    ratings = sorted({rating for _, rating in _law_rows()})
    return tuple(f"{rating:g} C" for rating in ratings)


def gauge_row(name: str) -> str:
    """Return the gauge whose row is read for the conductor `name`. Raises NotCovered."""
    one = conductor(name)
    if one.series == "AWG":
        return one.name
    gauge = gauge_for_area(one.area)
    if gauge is None:
        raise NotCovered(
            "conductor", "must be 1 mm2 or thicker: the rule sets begin at 18 AWG (0.82 mm²)."
        )
    return gauge.name


def air_around(ambient: float, surroundings: str) -> float:
    """Return the temperature [°C] taken around the wire: an engine space is at least 50 °C."""
    return max(ambient, ENGINE_AMBIENT) if surroundings == INSIDE else ambient


def ambient_factor(insulation: float, ambient: float, surroundings: str) -> tuple[float, bool]:
    """Return the correction for the air around the wire, and whether it is a printed one.

    `insulation` and `ambient` [°C]. The tables hold at 30 °C, and at 50 °C in an engine space,
    where 33 CFR prints 0.85 for 105 °C insulation. Between and beyond, the law behind every
    published factor, sqrt((Tc - Ta)/(Tc - 30)), NEC 310.15(B)(1). Cooler air than 30 °C is not
    credited.
    Raises NotCovered where the air is as hot as the insulation may be.
    """
    at = air_around(ambient, surroundings)
    if at >= insulation:
        raise NotCovered(
            "ambient", f"must be below the insulation's own rating of {insulation:g} °C."
        )
    if surroundings == INSIDE and at == ENGINE_AMBIENT and insulation == 105:
        return PRINTED_ENGINE_FACTOR, True
    return min(1.0, sqrt((insulation - at) / (insulation - BASE_AMBIENT))), False


def bundle_factor(rule_set: str, bundled: int, voltage: float) -> float:
    """Return the correction for `bundled` loaded conductors lying together.

    33 CFR applies its factors from 50 V on only; ABYC E-11 at every voltage. `voltage` [V] is the
    highest on the circuit. Raises NotCovered for more conductors than the rule set knows.
    """
    first = float(table("bundling_33cfr").rows[0]["applies_from_v"])
    if rule_set == LAW and voltage < first:
        return 1.0
    if rule_set == ABYC and bundled > 24:
        raise NotCovered(
            "bundled", "must be 24 or fewer: ABYC E-11 as restated gives no figure beyond."
        )
    return crowding(bundled)


def crowding(bundled: int) -> float:
    """Return the published factor for `bundled` conductors together, whether or not it applies."""
    for row in table("bundling_33cfr").rows:
        last = float(row["to_conductors"]) if row["to_conductors"] else inf
        if float(row["from_conductors"]) <= bundled <= last:
            return float(row["factor"])
    return 1.0


def ampacity(
    *,
    name: str,
    insulation: float,
    surroundings: str,
    bundled: int,
    ambient: float,
    voltage: float,
    rule_set: str,
) -> Ampacity:
    """Return the current that the conductor `name` bears under `rule_set`.

    `insulation` and `ambient` [°C], `voltage` [V]. Copper, continuous current.
    Raises NotCovered where the rule set has no figure.
    """
    if rule_set == ABYC and insulation != 105:
        raise NotCovered(
            "insulation", "must be 105 C under ABYC E-11: only that table is given here."
        )
    row = gauge_row(name)
    base = _law_rows()[(row.removesuffix(" AWG"), insulation)]
    if rule_set == ABYC:
        base = _abyc_base(row.removesuffix(" AWG"))
    surrounding, printed = ambient_factor(insulation, ambient, surroundings)
    bundle = bundle_factor(rule_set, bundled, voltage)
    air = air_around(ambient, surroundings)
    return Ampacity(row, base, air, printed, surrounding, bundle, base * surrounding * bundle)


def bears(name: str, insulation: float = 105.0) -> float | None:
    """Return the table 5 ampacity [A] of `name` at 30 °C, two together, or None below the table.

    `insulation` [°C].
    """
    try:
        row = gauge_row(name)
    except NotCovered:
        return None
    return _law_rows()[(row.removesuffix(" AWG"), insulation)]


def _abyc_base(awg: str) -> float:
    for row in table("ampacity_abyc_e11_105c").rows:
        if row["awg"] == awg and row["space"] == "outside" and row["bundle_from"] == "1":
            return float(row["ampacity_a"])
    raise NotCovered(
        "conductor", f"must be another size: ABYC E-11 as restated has no row for {awg} AWG."
    )
