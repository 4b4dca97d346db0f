"""Copper conductors by name: resistance, area, and the sizes of a series.

In scope: stranded copper, plain or tinned; AWG 22 to 4/0 (NEC chapter 9 table 8 at 75 °C; the two
thinnest by IACS copper) and metric sizes of IEC 60228, class 5 (flexible) or class 2 (stranded),
at 20 °C, the largest resistance the standard permits. A gauge number may also be read as an SAE
size, which holds less copper.
Out of scope: aluminium, copper-clad aluminium, and skin effect (direct current only).
"""

from dataclasses import dataclass
from functools import cache
from math import pi

from calc.tables import table

ZERO_RESISTANCE = 234.5  # °C, inferred for copper: FAA AC 43.13-1B 11-66
PLAIN, TINNED = "plain", "tinned"
FLEXIBLE, STRANDED = "flexible (class 5)", "stranded (class 2)"
AWG, SAE = "AWG", "SAE"
_METRES_PER_KFT = 304.8
_CIRCULAR_MIL = pi / 4 * 2.54e-5**2  # m²


class NotCovered(ValueError):
    """The published source gives no figure; `field` is the input that it lacks one for."""

    def __init__(self, field: str, why: str) -> None:
        super().__init__(why)
        self.field = field


@dataclass(frozen=True)
class Conductor:
    """A named size: resistance [ohm/m] at `reference` [°C], plain and tinned, and area [m²].

    A metric size has its class 5 resistance in `plain` and `tinned` and that of class 2 in
    `stranded` (plain, tinned). A gauge has `sae_area` [m²], or None where no SAE area is
    published; `computed` marks a gauge whose resistance comes from IACS copper, not from a table.
    """

    name: str
    series: str
    area: float
    plain: float
    tinned: float
    reference: float
    stranded: tuple[float, float] | None = None
    sae_area: float | None = None
    computed: bool = False


@cache
def conductors() -> tuple[Conductor, ...]:
    """Return every named size, thinnest first within its series."""
    return _gauges() + _metric()


def _gauges() -> tuple[Conductor, ...]:
    areas = {row["awg"]: float(row["area_mm2"]) * 1e-6 for row in table("awg_area").rows}
    sae = {
        row["awg"]: float(row["sae_area_cmil"]) * _CIRCULAR_MIL for row in table("sae_area").rows
    }
    thin, printed = table("awg_thin_resistance").rows, table("awg_resistance").rows
    return tuple(
        Conductor(
            f"{row['awg']} AWG",
            "AWG",
            areas[row["awg"]],
            float(row["plain_ohm_per_kft"]) / _METRES_PER_KFT,
            float(row["tinned_ohm_per_kft"]) / _METRES_PER_KFT,
            75.0,
            sae_area=sae.get(row["awg"]),
            computed=row in thin,
        )
        for row in (*thin, *printed)
    )


def _metric() -> tuple[Conductor, ...]:
    class_2 = {
        row["size_mm2"]: (
            float(row["plain_ohm_per_km"]) / 1000,
            float(row["tinned_ohm_per_km"]) / 1000,
        )
        for row in table("iec60228_class2").rows
    }
    return tuple(
        Conductor(
            f"{row['size_mm2']} mm2",
            "mm2",
            float(row["size_mm2"]) * 1e-6,
            float(row["plain_ohm_per_km"]) / 1000,
            float(row["tinned_ohm_per_km"]) / 1000,
            20.0,
            stranded=class_2[row["size_mm2"]],
        )
        for row in table("iec60228_class5").rows
    )


@cache
def _by_name() -> dict[str, Conductor]:
    return {one.name: one for one in conductors()}


def conductor(name: str) -> Conductor:
    """Return the conductor with the canonical `name`, such as `8 AWG`. Raises KeyError."""
    return _by_name()[name]


def series_of(name: str) -> tuple[Conductor, ...]:
    """Return every size of the series that `name` belongs to, thinnest first."""
    series = conductor(name).series
    return tuple(one for one in conductors() if one.series == series)


def at_temperature(resistance: float, reference: float, temperature: float) -> float:
    """Return copper's `resistance` [any unit, known at `reference` °C] at `temperature` [°C].

    R2 = R1 (234.5 + T2) / (234.5 + T1), FAA AC 43.13-1B paragraph 11-66. Holds for annealed copper
    from about -50 °C to 200 °C.
    """
    return resistance * (ZERO_RESISTANCE + temperature) / (ZERO_RESISTANCE + reference)


def copper_area(name: str, gauge_reading: str) -> float:
    """Return the copper [m²] in the conductor `name`, a gauge being read as AWG or as SAE size.

    A metric size is its own area, as named. Raises NotCovered where no SAE area is published.
    """
    one = conductor(name)
    if one.series != "AWG" or gauge_reading == AWG:
        return one.area
    if one.sae_area is None:
        raise NotCovered("gauge_reading", f"must be AWG for {name}: no SAE area is published.")
    return one.sae_area


def tabulated(name: str, *, finish: str, strands: str) -> float:
    """Return the published resistance [ohm/m] of one conductor at its own `reference`.

    `finish` is plain or tinned; `strands` chooses the class of a metric size and means nothing
    for a gauge, whose table has one stranding.
    """
    one = conductor(name)
    pair = one.plain, one.tinned
    if one.stranded is not None and strands == STRANDED:
        pair = one.stranded
    return pair[finish == TINNED]


def resistance_per_length(
    name: str, temperature: float, *, finish: str, strands: str, gauge_reading: str
) -> float:
    """Return the resistance [ohm/m] of one conductor `name` at `temperature` [°C].

    Read as SAE, a gauge resists more by as much as it has less copper (SAE J1127 and J1128
    minimum areas against ASTM B258). Raises NotCovered where no SAE area is published.
    """
    one = conductor(name)
    at_reference = tabulated(name, finish=finish, strands=strands)
    read = at_reference * one.area / copper_area(name, gauge_reading)
    return at_temperature(read, one.reference, temperature)
