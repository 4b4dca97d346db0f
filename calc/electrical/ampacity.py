"""How much current a named set of published rules lets a conductor carry, by its tables.

33 CFR 183.425 and ABYC E-11 are written for boats; NEC 310.16 is for the mains side
(`calc.electrical.nec`). There is no rule set for camper vans that we may show. Each keeps its own
conditions. Tables are by AWG; a metric size, and a wire made to an SAE size, is worked as the
thickest gauge of the table that holds no more copper. A conductor as it is laid, with every
correction, is `calc.electrical.cable`.
"""

from dataclasses import dataclass
from functools import cache, lru_cache
from math import inf, sqrt
from typing import Annotated

from calc.electrical import nec
from calc.electrical.conductors import GaugeReading, Series, conductor, conductors, copper_area
from calc.tables import table
from calc.units.compare import at_least
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import Amperes, Celsius, Count, Share, Tag

BASE_AMBIENT: Annotated[Celsius, Tag("air of the ampacity tables")] = 30.0  # of every rule set
# 33 CFR 183.425 table 5, and ABYC E-11
ENGINE_AMBIENT: Annotated[Celsius, Tag("air of an engine space")] = 50.0
# 33 CFR 183.425 table 5 note 1, seen in text
PRINTED_ENGINE_FACTOR: Annotated[Share, Tag("printed factor of an engine space")] = 0.85
# The same note, seen in text
PRINTED_FOR: Annotated[Celsius, Tag("insulation of the printed engine factor")] = 105.0
# ABYC E-11 as restated gives no figure beyond
ABYC_MOST_BUNDLED: Annotated[Count, Tag("largest bundle of ABYC's table")] = 24.0


class RuleSet(Enumeration):
    """A published set of conductor limits."""

    CFR33 = "33CFR183.425"
    ABYC = "ABYC-E-11"
    NEC = "NEC-310.16"

    @property
    def cited(self) -> str:
        """How the set is cited."""
        return _CITED[self]


_CITED = {
    RuleSet.CFR33: "33 CFR 183.425",
    RuleSet.ABYC: "ABYC E-11",
    RuleSet.NEC: nec.TABLE,
}


class Surroundings(Enumeration):
    """Where a conductor runs."""

    OUTSIDE = "outside-engine-space"
    INSIDE = "inside-engine-space"


@cache
def _cfr33_rows() -> dict[tuple[str, float], float]:
    return {
        (row["awg"], float(row["insulation_c"])): float(row["ampacity_a"])
        for row in table("ampacity_33cfr183_425").rows
    }


@cache
def _abyc_rows() -> dict[tuple[str, float], float]:
    return {
        (row["awg"], 105.0): float(row["ampacity_a"])
        for row in table("ampacity_abyc_e11_105c").rows
        if row["space"] == "outside" and row["bundle_from"] == "1"
    }


def _rows(rule_set: RuleSet) -> dict[tuple[str, float], float]:
    by_rule_set = {RuleSet.CFR33: _cfr33_rows, RuleSet.ABYC: _abyc_rows, RuleSet.NEC: nec.rows}
    return by_rule_set[RuleSet(rule_set)]()


@cache
def insulations() -> tuple[str, ...]:
    """Return the insulation ratings of 33 CFR 183.425 table 5 as they are named: `105 C`."""
    return tuple(map(insulation_name, ratings(RuleSet.CFR33)))


def insulation_name(rating: float) -> str:
    """Return how an insulation rating [°C] is named: `105 C`."""
    return f"{rating:g} C"


def insulation_rating(name: str) -> float:
    """Return the temperature [°C] of an insulation rating by its name, such as `105 C`.

    Raises NotCovered for a name that is not in `insulations()`.
    """
    if name not in insulations():
        raise NotCovered("insulation", f"must be {', '.join(insulations())}, not {name!r}.")
    return float(name.removesuffix(" C"))


@cache
def ratings(rule_set: RuleSet) -> tuple[float, ...]:
    """Return the insulation ratings [°C] that `rule_set` has figures for."""
    return tuple(sorted({rating for _, rating in _rows(rule_set)}))


@cache
def _gauges(rule_set: RuleSet, insulation: float) -> tuple[str, ...]:
    """Return the gauges with a row for `insulation` [°C], thinnest first."""
    names = {f"{gauge} AWG" for gauge, rating in _rows(rule_set) if rating == insulation}
    return tuple(one.name for one in conductors() if one.name in names)


@cache
def gauge_row(name: str, gauge_reading: GaugeReading, rule_set: RuleSet, insulation: float) -> str:
    """Return the gauge whose row is read for the conductor `name`.

    A gauge read as AWG is its own row, or has none; anything else is the thickest gauge with no
    more copper in it. `insulation` [°C]. Raises NotCovered.
    """
    one = conductor(name)
    rules = RuleSet(rule_set)
    gauges = _gauges(rules, insulation)
    if not gauges:
        raise NotCovered("insulation", f"must be {_known(rules)}")
    area = copper_area(name, gauge_reading)
    thinnest = conductor(gauges[0])
    if not at_least(area, thinnest.area):
        share = thinnest.area * 1e6
        raise NotCovered(
            "conductor",
            f"must be thicker: {rules.cited} begins at {thinnest.name} ({share:.2f} mm²)"
            f"{f' for {insulation:g} °C insulation' if rules is RuleSet.NEC else ''}.",
        )
    if one.series is Series.AWG and gauge_reading == GaugeReading.AWG:
        if name not in gauges:
            raise NotCovered(
                "conductor",
                f"must be another size: {rules.cited} as restated has no row for {name}.",
            )
        return name
    return next(gauge for gauge in reversed(gauges) if at_least(area, conductor(gauge).area))


def row_ampacity(row: str, insulation: float, rule_set: RuleSet) -> float:
    """Return the ampacity [A] printed in the `row` of a gauge (`8 AWG`) for `insulation` [°C].

    Raises NotCovered where the rule set has no such column.
    """
    found = _rows(rule_set).get((row.removesuffix(" AWG"), insulation))
    if found is None:
        raise NotCovered("insulation", f"must be {_known(RuleSet(rule_set))}")
    return found


def air_around(ambient: float, surroundings: Surroundings) -> float:
    """Return the temperature [°C] taken around the wire: an engine space is at least 50 °C.

    `ambient` [°C] is that of the hottest place on its way. Raises NotCovered.
    """
    if Surroundings(surroundings) is Surroundings.INSIDE:
        return max(ambient, ENGINE_AMBIENT)
    return ambient


@lru_cache(64)
def ambient_factor(
    insulation: float, ambient: float, surroundings: Surroundings, rule_set: RuleSet
) -> tuple[float, bool]:
    """Return the correction for the air around the wire, and whether it is a printed one.

    `insulation` and `ambient` [°C]. NEC 310.16 has its own factors, by band. The boats' tables
    hold at 30 °C, and at 50 °C in an engine space, where 33 CFR prints 0.85 for 105 °C insulation.
    They print nothing between and beyond; there NEC's law, sqrt((Tc - Ta)/(Tc - 30)), is put to
    work, which is our step. Cooler air than 30 °C is not credited.
    Raises NotCovered where the air is as hot as the insulation may be, or beyond NEC's bands.
    """
    at = air_around(ambient, surroundings)
    if at >= insulation:
        raise NotCovered(
            "ambient", f"must be below the insulation's own rating of {insulation:g} °C."
        )
    if RuleSet(rule_set) is RuleSet.NEC:
        return nec.ambient_factor(insulation, at), True
    engine = Surroundings(surroundings) is Surroundings.INSIDE
    if engine and at == ENGINE_AMBIENT and insulation == PRINTED_FOR:
        return PRINTED_ENGINE_FACTOR, True
    return min(1.0, sqrt((insulation - at) / (insulation - BASE_AMBIENT))), False


@lru_cache(64)
def bundle_factor(rule_set: RuleSet, bundled: float, max_voltage: float) -> float:
    """Return the correction for `bundled` loaded conductors lying together.

    33 CFR applies its factors from a nominal 50 V on (183.435(b)); the highest voltage on the
    circuit, `max_voltage` [V], gives the safer reading. ABYC E-11 and NEC 310.15(C)(1) at every
    voltage. Raises NotCovered for more conductors than the rule set knows.
    """
    rules = RuleSet(rule_set)
    if rules is RuleSet.NEC:
        return nec.bundle_factor(bundled)
    first = float(table("bundling_33cfr").rows[0]["applies_from_v"])
    if rules is RuleSet.CFR33 and max_voltage < first:
        return 1.0
    if rules is RuleSet.ABYC and bundled > ABYC_MOST_BUNDLED:
        raise NotCovered(
            "bundled", "must be 24 or fewer: ABYC E-11 as restated gives no figure beyond."
        )
    return grouping_factor(bundled)


@cache
def grouping_factor(bundled: float) -> float:
    """Return 33 CFR's factor for `bundled` conductors together, whether or not it applies."""
    for row in table("bundling_33cfr").rows:
        last = float(row["to_conductors"]) if row["to_conductors"] else inf
        if float(row["from_conductors"]) <= bundled <= last:
            return float(row["factor"])
    return 1.0


def _known(rule_set: RuleSet) -> str:
    if rule_set is RuleSet.ABYC:
        return "105 C under ABYC E-11: only that table is given here."
    *others, last = map(insulation_name, ratings(rule_set))
    return f"{', '.join(others)} or {last} under {rule_set.cited}: it has no other column."


def table_ampacity(name: str, *, insulation: float, gauge_reading: GaugeReading) -> float | None:
    """Return the ampacity [A] of `name` in table 5 of 33 CFR 183.425, or None below the table.

    At 30 °C, two together, with `insulation` [°C]. Raises NotCovered for insulation that has no
    column.
    """
    try:
        row = gauge_row(name, gauge_reading, RuleSet.CFR33, insulation)
    except NotCovered as gap:
        if gap.parameter == "insulation":
            raise
        return None
    return row_ampacity(row, insulation, RuleSet.CFR33)


def ampacity_by_copper(name: str, *, insulation: float, gauge_reading: GaugeReading) -> float:
    """Return the ampacity [A] of `name` as in table 5, and below the table by its share of copper.

    At 30 °C, two together, with `insulation` [°C]. Below 18 AWG nothing is published. Its figure
    is scaled by area there, which is our step (common practice, no source) and errs to the safe
    side: a thinner wire has more skin for its copper. Raises NotCovered for insulation without a
    column.
    """
    found = table_ampacity(name, insulation=insulation, gauge_reading=gauge_reading)
    if found is not None:
        return found
    thinnest = _gauges(RuleSet.CFR33, insulation)[0]
    share = copper_area(name, gauge_reading) / conductor(thinnest).area
    return share * row_ampacity(thinnest, insulation, RuleSet.CFR33)


@dataclass(frozen=True, kw_only=True)
class TableAmpacity:
    """What `parallel` like conductors carry by table 5 of 33 CFR 183.425, before all corrections.

    At 30 °C, two together, with insulation of 105 °C and of 60 °C. Below the table it is by their
    share of the copper of its thinnest row.
    """

    conductor: str
    parallel: Count
    gauge_reading: GaugeReading
    at_105: Amperes
    at_60: Amperes

    @property
    def one_at_60(self) -> Amperes:
        """What one of them carries with insulation of 60 °C."""
        return self.at_60 / self.parallel

    @property
    def below_table(self) -> bool:
        """Whether the table has no row for so thin a conductor."""
        reading = self.gauge_reading
        found = table_ampacity(self.conductor, insulation=105.0, gauge_reading=reading)
        return found is None


def ampacity_of_run(name: str, *, parallel: float, gauge_reading: GaugeReading) -> TableAmpacity:
    """Return what `parallel` conductors `name` carry by the table alone. Raises NotCovered."""
    at_105, at_60 = (
        ampacity_by_copper(name, insulation=insulation, gauge_reading=gauge_reading)
        for insulation in (105.0, 60.0)
    )
    return TableAmpacity(
        conductor=name,
        parallel=parallel,
        gauge_reading=gauge_reading,
        at_105=parallel * at_105,
        at_60=parallel * at_60,
    )
