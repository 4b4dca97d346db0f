"""How much current a conductor bears, by a named set of published rules.

33 CFR 183.425 and ABYC E-11 are written for boats; NEC 310.16 is for the mains side
(`calc.electrical.nec`). There is no rule set for camper vans that we may show. Each keeps its own
conditions. Tables are by AWG; a metric size, and a wire made to an SAE size, is worked as the
thickest gauge of the table that holds no more copper.
"""

from dataclasses import dataclass
from functools import cache, lru_cache
from math import inf, sqrt

from calc.electrical import nec
from calc.electrical.conductors import AWG, conductor, conductors, copper_area
from calc.electrical.conductors import NotCovered as NotCovered
from calc.electrical.nec import NEC as NEC
from calc.tables import table

LAW, ABYC = "33 CFR 183.425", "ABYC E-11"
OUTSIDE, INSIDE = "outside engine space", "inside engine space"
BASE_AMBIENT, ENGINE_AMBIENT = 30.0, 50.0  # °C, of every rule set; of the boats' engine space
PRINTED_ENGINE_FACTOR = 0.85  # 105 °C insulation, 33 CFR 183.425 table 5 note 1, seen in text


@dataclass(frozen=True)
class Ampacity:
    """Corrected ampacity [A] and its parts.

    `row` is the gauge whose row was read, `air` [°C] the temperature taken around the wire, and
    `printed_factor` tells that the factor for it is the rule's own printed one. `small_ceiling` [A]
    is the largest fuse that NEC 240.4(D) allows on a small conductor, whatever its ampacity;
    `terminal_ceiling` [A] that of its 75 °C column, where hotter insulation would bear more.
    """

    row: str
    table_ampacity: float
    air: float
    printed_factor: bool
    ambient_factor: float
    bundle_factor: float
    ampacity: float
    small_ceiling: float | None = None
    terminal_ceiling: float | None = None

    @property
    def largest_fuse(self) -> float:
        """Return the most [A] that a fuse on this wire may be rated."""
        return min(self.ampacity, self.small_ceiling or inf, self.terminal_ceiling or inf)


@cache
def _law_rows() -> dict[tuple[str, float], float]:
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


def _rows(rule_set: str) -> dict[tuple[str, float], float]:
    return {LAW: _law_rows, ABYC: _abyc_rows, NEC: nec.rows}[rule_set]()


@cache
def insulations() -> tuple[str, ...]:
    """Return the insulation ratings of 33 CFR 183.425 table 5, as choices."""
    return tuple(f"{rating:g} C" for rating in ratings(LAW))


@cache
def ratings(rule_set: str) -> tuple[float, ...]:
    """Return the insulation ratings [°C] that `rule_set` has figures for."""
    return tuple(sorted({rating for _, rating in _rows(rule_set)}))


@cache
def _gauges(rule_set: str, insulation: float) -> tuple[str, ...]:
    """Return the gauges with a row for `insulation` [°C], thinnest first."""
    names = {f"{gauge} AWG" for gauge, rating in _rows(rule_set) if rating == insulation}
    return tuple(one.name for one in conductors() if one.name in names)


@cache
def gauge_row(
    name: str, gauge_reading: str = AWG, rule_set: str = LAW, insulation: float = 105.0
) -> str:
    """Return the gauge whose row is read for the conductor `name`.

    A gauge read as AWG is its own row, or has none; anything else is the thickest gauge with no
    more copper in it. `insulation` [°C]. Raises NotCovered.
    """
    one = conductor(name)
    gauges = _gauges(rule_set, insulation)
    area = copper_area(name, gauge_reading)
    thinnest = conductor(gauges[0])
    if area < thinnest.area * (1 - 1e-9):
        share = thinnest.area * 1e6
        raise NotCovered(
            "conductor",
            f"must be thicker: {rule_set} begins at {thinnest.name} ({share:.2f} mm²)"
            f"{f' for {insulation:g} °C insulation' if rule_set == NEC else ''}.",
        )
    if one.series == "AWG" and gauge_reading == AWG:
        if name not in gauges:
            raise NotCovered(
                "conductor", f"must be another size: {rule_set} as restated has no row for {name}."
            )
        return name
    return next(gauge for gauge in reversed(gauges) if conductor(gauge).area <= area * (1 + 1e-9))


def air_around(ambient: float, surroundings: str) -> float:
    """Return the temperature [°C] taken around the wire: an engine space is at least 50 °C."""
    return max(ambient, ENGINE_AMBIENT) if surroundings == INSIDE else ambient


@lru_cache(64)
def ambient_factor(
    insulation: float, ambient: float, surroundings: str, rule_set: str = LAW
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
    if rule_set == NEC:
        return nec.ambient_factor(insulation, at), True
    if surroundings == INSIDE and at == ENGINE_AMBIENT and insulation == 105:
        return PRINTED_ENGINE_FACTOR, True
    return min(1.0, sqrt((insulation - at) / (insulation - BASE_AMBIENT))), False


@lru_cache(64)
def bundle_factor(rule_set: str, bundled: int, voltage: float) -> float:
    """Return the correction for `bundled` loaded conductors lying together.

    33 CFR applies its factors from a nominal 50 V on (183.435(b)); give the highest `voltage` for
    the safer reading. ABYC E-11 and NEC 310.15(C)(1) at every voltage.
    Raises NotCovered for more conductors than the rule set knows.
    """
    if rule_set == NEC:
        return nec.bundle_factor(bundled)
    first = float(table("bundling_33cfr").rows[0]["applies_from_v"])
    if rule_set == LAW and voltage < first:
        return 1.0
    if rule_set == ABYC and bundled > 24:
        raise NotCovered(
            "bundled", "must be 24 or fewer: ABYC E-11 as restated gives no figure beyond."
        )
    return crowding(bundled)


@cache
def crowding(bundled: int) -> float:
    """Return 33 CFR's factor for `bundled` conductors together, whether or not it applies."""
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
    gauge_reading: str = AWG,
) -> Ampacity:
    """Return the current that the conductor `name` bears under `rule_set`.

    `insulation` and `ambient` [°C], `voltage` [V]; `gauge_reading` says whether a gauge number is
    an AWG or an SAE size. Copper, continuous current.
    Raises NotCovered where the rule set has no figure.
    """
    if insulation not in ratings(rule_set):
        raise NotCovered("insulation", f"must be {_known(rule_set)}")
    row = gauge_row(name, gauge_reading, rule_set, insulation)
    gauge = row.removesuffix(" AWG")
    base = _rows(rule_set)[gauge, insulation]
    surrounding, printed = ambient_factor(insulation, ambient, surroundings, rule_set)
    bundle = bundle_factor(rule_set, bundled, voltage)
    air = air_around(ambient, surroundings)
    small = nec.small_ceiling(gauge) if rule_set == NEC else None
    terminals = nec.terminal_ceiling(gauge, insulation) if rule_set == NEC else None
    bearing = base * surrounding * bundle
    return Ampacity(row, base, air, printed, surrounding, bundle, bearing, small, terminals)


def _known(rule_set: str) -> str:
    if rule_set == ABYC:
        return "105 C under ABYC E-11: only that table is given here."
    *others, last = (f"{rating:g} C" for rating in ratings(rule_set))
    return f"{', '.join(others)} or {last} under {rule_set}: it has no other column."


def bears(name: str, insulation: float = 105.0, gauge_reading: str = AWG) -> float | None:
    """Return the table 5 ampacity [A] of `name` at 30 °C, two together, or None below the table.

    `insulation` [°C].
    """
    try:
        row = gauge_row(name, gauge_reading)
    except NotCovered:
        return None
    return _law_rows()[(row.removesuffix(" AWG"), insulation)]


def bears_by_copper(name: str, insulation: float = 105.0, gauge_reading: str = AWG) -> float:
    """Return what `name` bears [A] at 30 °C, two together; below table 5 by its share of copper.

    `insulation` [°C]. Below 18 AWG nothing is published. Its figure is scaled by area there, which
    is our step (common practice, no source) and errs to the safe side: a thinner wire has more
    skin for its copper.
    """
    found = bears(name, insulation, gauge_reading)
    if found is not None:
        return found
    thinnest = _gauges(LAW, insulation)[0]
    share = copper_area(name, gauge_reading) / conductor(thinnest).area
    return share * _law_rows()[thinnest.removesuffix(" AWG"), insulation]
