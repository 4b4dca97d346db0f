"""How much current a named set of published rules lets a conductor carry, by its tables.

33 CFR 183.425 and ABYC E-11 are written for boats; NEC 310.16 is for the mains side
(`calc.electrical.nec`). There is no rule set for camper vans that we may show. Each keeps its own
conditions. Tables are by AWG; a metric size, and a wire made to an SAE size, is worked as the
thickest gauge of the table that holds no more copper. What 33 CFR prints nothing for, a 70 °C
column and a wire thinner than its first row, is worked from what it prints, which is our step. A
conductor as it is laid, with every correction, is `calc.electrical.cable`.
"""

from functools import cache, lru_cache
from math import inf, sqrt
from typing import Annotated

from calc.electrical import nec
from calc.electrical.conductors import GaugeReading, Series, conductor, copper_area, row_area
from calc.tables import table
from calc.units.compare import at_least
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import Celsius, Count, Share, Tag

BASE_AMBIENT: Annotated[Celsius, Tag("air of the ampacity tables")] = 30.0  # of every rule set
# 33 CFR 183.425 table 5, and ABYC E-11
ENGINE_AMBIENT: Annotated[Celsius, Tag("air of an engine space")] = 50.0
# 33 CFR 183.425 table 5 note 1, seen in text
PRINTED_ENGINE_FACTOR: Annotated[Share, Tag("printed factor of an engine space")] = 0.85
# The same note, seen in text
PRINTED_FOR: Annotated[Celsius, Tag("insulation of the printed engine factor")] = 105.0
# ABYC E-11 as restated gives no figure beyond
ABYC_MOST_BUNDLED: Annotated[Count, Tag("largest bundle of ABYC's table")] = 24.0
# Most cable for houses and much for vehicles is rated so, and 33 CFR prints no column for it
BETWEEN_COLUMNS: Annotated[Celsius, Tag("insulation between two columns of 33 CFR")] = 70.0


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
def _cfr33_printed() -> dict[tuple[str, float], float]:
    return {
        (row["awg"], float(row["insulation_c"])): float(row["ampacity_a"])
        for row in table("ampacity_33cfr183_425").rows
    }


@cache
def _cfr33_rows() -> dict[tuple[str, float], float]:
    printed = _cfr33_printed()
    between = {
        (gauge, BETWEEN_COLUMNS): _between_columns(printed, gauge)
        for gauge in dict.fromkeys(gauge for gauge, _ in printed)
    }
    return printed | between


def _between_columns(printed: dict[tuple[str, float], float], gauge: str) -> float:
    """Return what `gauge` can carry [A] with 70 °C insulation, for which nothing is printed.

    From the next hotter column by the law behind NEC's factors, sqrt((Tc - Ta)/(Tb - Ta)), and no
    less than the next cooler column has: our step, by a published law.
    """
    cooler = max(at for name, at in printed if name == gauge and at < BETWEEN_COLUMNS)
    hotter = min(at for name, at in printed if name == gauge and at > BETWEEN_COLUMNS)
    law = sqrt((BETWEEN_COLUMNS - BASE_AMBIENT) / (hotter - BASE_AMBIENT))
    return max(printed[gauge, cooler], law * printed[gauge, hotter])


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
    """Return the insulation ratings that can be asked for, as they are named: `105 C`.

    Those of 33 CFR 183.425 table 5, and 70 °C.
    """
    return tuple(map(insulation_name, sorted({*ratings(RuleSet.CFR33), BETWEEN_COLUMNS})))


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
    """Return the insulation ratings [°C] that `rule_set` prints figures for."""
    printed = {rating for _, rating in _rows(rule_set)} - {BETWEEN_COLUMNS}
    return tuple(sorted(printed))


@cache
def _gauges(rule_set: RuleSet, insulation: float) -> tuple[str, ...]:
    """Return the gauges with a row for `insulation` [°C], thinnest first."""
    gauges = (gauge for gauge, rating in _rows(rule_set) if rating == insulation)
    rows = (gauge if " " in gauge else f"{gauge} AWG" for gauge in gauges)
    return tuple(sorted(rows, key=row_area))


@cache
def gauge_row(name: str, gauge_reading: GaugeReading, rule_set: RuleSet, insulation: float) -> str:
    """Return the gauge whose row is read for the conductor `name`.

    A gauge read as AWG is its own row, or has none; anything else is the thickest gauge with no
    more copper in it. `insulation` [°C]. Raises NotCovered.
    """
    row, share = row_and_share(name, gauge_reading, rule_set, insulation)
    if share < 1:
        raise _too_thin(RuleSet(rule_set), insulation)
    return row


@cache
def row_and_share(
    name: str, gauge_reading: GaugeReading, rule_set: RuleSet, insulation: float
) -> tuple[str, float]:
    """Return the gauge whose row is read for the conductor `name`, and what share of it counts.

    The share is 1 but for a wire thinner than the first row of 33 CFR: that is read as the first
    row, by its share of the copper (our step, common practice, no source). It errs to the safe
    side: a thinner wire has more skin for its copper. `insulation` [°C]. Raises NotCovered.
    """
    one = conductor(name)
    rules = RuleSet(rule_set)
    gauges = _gauges(rules, insulation)
    if not gauges:
        raise NotCovered("insulation", f"must be {_known(rules)}")
    area = copper_area(name, gauge_reading)
    thinnest = conductor(gauges[0])
    if not at_least(area, thinnest.area):
        if rules is not RuleSet.CFR33:
            raise _too_thin(rules, insulation)
        return thinnest.name, area / thinnest.area
    if one.series is Series.AWG and gauge_reading == GaugeReading.AWG:
        if name not in gauges:
            raise NotCovered(
                "conductor",
                f"must be another size: {rules.cited} as restated has no row for {name}.",
            )
        return name, 1.0
    row = next(gauge for gauge in reversed(gauges) if at_least(area, row_area(gauge)))
    return row, 1.0


def _too_thin(rules: RuleSet, insulation: float) -> NotCovered:
    thinnest = conductor(_gauges(rules, insulation)[0])
    return NotCovered(
        "conductor",
        f"must be larger: {rules.cited} begins at {thinnest.name} ({thinnest.area * 1e6:.2f} mm²)"
        f"{f' for {insulation:g} °C insulation' if rules is RuleSet.NEC else ''}.",
    )


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
    work, which is our step; above 50 °C an engine space goes on from the printed factor, so that
    hotter air never leaves more. Cooler air than 30 °C is not credited.
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
    if engine and insulation == PRINTED_FOR:
        hotter = sqrt((insulation - at) / (insulation - ENGINE_AMBIENT))
        return PRINTED_ENGINE_FACTOR * hotter, at == ENGINE_AMBIENT
    return min(1.0, sqrt((insulation - at) / (insulation - BASE_AMBIENT))), False


@lru_cache(64)
def bundle_factor(rule_set: RuleSet, bundled: float) -> float:
    """Return the correction for `bundled` loaded conductors lying together, at any voltage.

    ABYC E-11 and NEC 310.15(C)(1) count them at every voltage. 33 CFR has the same factors as ABYC
    and applies them from a nominal 50 V on (183.435(b)). A bundle is as hot at 12 V, so they are
    used below it too, which is our prudence (`counts_bundles` tells). Raises NotCovered for more
    conductors than the rule set knows.
    """
    rules = RuleSet(rule_set)
    if rules is RuleSet.NEC:
        return nec.bundle_factor(bundled)
    if rules is RuleSet.ABYC and bundled > ABYC_MOST_BUNDLED:
        raise NotCovered(
            "bundled", "must be 24 or fewer: ABYC E-11 as restated gives no value beyond."
        )
    for row in table("bundling_33cfr").rows:
        last = float(row["to_conductors"]) if row["to_conductors"] else inf
        if float(row["from_conductors"]) <= bundled <= last:
            return float(row["factor"])
    return 1.0


def counts_bundles(rule_set: RuleSet, max_voltage: float) -> bool:
    """Return whether the rule set itself counts bundles at `max_voltage` [V].

    33 CFR from a nominal 50 V on, 183.435(b); the highest voltage gives the safer reading.
    """
    first = float(table("bundling_33cfr").rows[0]["applies_from_v"])
    return RuleSet(rule_set) is not RuleSet.CFR33 or at_least(max_voltage, first)


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
