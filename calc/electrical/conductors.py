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
from typing import Annotated

from calc.tables import table
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import Celsius, OhmsPerMetre, Share, SquareMetres, Tag

# Inferred, not reached: FAA AC 43.13-1B 11-66
COPPER_ZERO_RESISTANCE: Annotated[Celsius, Tag("copper's zero-resistance temperature")] = -234.5
_METRES_PER_KFT = 304.8
_CIRCULAR_MIL = pi / 4 * 2.54e-5**2  # m²


class Finish(Enumeration):
    """What the strands are coated with."""

    PLAIN = "plain"
    TINNED = "tinned"


class Strands(Enumeration):
    """The class of a metric conductor by IEC 60228; a gauge table has one stranding."""

    FLEXIBLE = "flexible-(class-5)"
    STRANDED = "stranded-(class-2)"


class GaugeReading(Enumeration):
    """What a gauge number on the reel stands for: AWG, or an SAE size, which holds less copper."""

    AWG = "AWG"
    SAE = "SAE"


class Series(Enumeration):
    """A series of named sizes."""

    AWG = "AWG"
    METRIC = "mm2"


@dataclass(frozen=True)
class Conductor:
    """A named size: resistance at `reference`, plain and tinned, and area.

    A metric size has its class 5 resistance in `plain` and `tinned` and that of class 2 in
    `stranded` (plain, tinned). A gauge has `sae_area`, or None where no SAE area is
    published; `computed` marks a gauge whose resistance comes from IACS copper, not from a table.
    """

    name: str
    series: Series
    area: SquareMetres
    plain: OhmsPerMetre
    tinned: OhmsPerMetre
    reference: Celsius
    stranded: tuple[float, float] | None = None
    sae_area: SquareMetres | None = None
    computed: bool = False


@dataclass(frozen=True, kw_only=True)
class Copper:
    """The copper in a named size, a gauge being read as AWG or as an SAE size."""

    conductor: str
    gauge_reading: GaugeReading
    area: SquareMetres

    @property
    def metric(self) -> bool:
        """Whether the size is named by its area."""
        return conductor(self.conductor).series is Series.METRIC

    @property
    def as_sae(self) -> bool:
        """Whether a gauge is read as an SAE size."""
        return self.gauge_reading is GaugeReading.SAE and not self.metric

    @property
    def named_area(self) -> SquareMetres:
        """The area of the size as it is named: of a gauge, by the definition of AWG."""
        return conductor(self.conductor).area

    @property
    def sae_share(self) -> Share | None:
        """How much less copper the SAE size of the same number holds, None where none is known."""
        one = conductor(self.conductor)
        return 1 - one.sae_area / one.area if one.sae_area else None


HARDLY_SOLD = frozenset({"3 AWG"})  # as flexible cable: common practice, no source


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
            Series.AWG,
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
            Series.METRIC,
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
    """Return the conductor with the canonical `name`, such as `8 AWG`. Raises NotCovered."""
    found = _by_name().get(name)
    if found is None:
        raise NotCovered("conductor", f"must be {', '.join(_by_name())}, not {name!r}.")
    return found


def series_of(name: str) -> tuple[Conductor, ...]:
    """Return every size of the series that `name` belongs to, thinnest first."""
    series = conductor(name).series
    return tuple(one for one in conductors() if one.series is series)


def at_temperature(resistance: float, reference: float, temperature: float) -> float:
    """Return copper's `resistance` [any unit, known at `reference` °C] at `temperature` [°C].

    R2 = R1 (234.5 + T2) / (234.5 + T1), FAA AC 43.13-1B paragraph 11-66. Holds for annealed copper
    from about -50 °C to 200 °C.
    """
    zero = COPPER_ZERO_RESISTANCE
    return resistance * (temperature - zero) / (reference - zero)


def row_area(row: str) -> float:
    """Return the copper [m²] of a row of a table: a gauge (`8 AWG`), or `250 kcmil` and thicker.

    Raises NotCovered.
    """
    number, unit = row.split()
    return float(number) * 1000 * _CIRCULAR_MIL if unit == "kcmil" else conductor(row).area


def copper_area(name: str, gauge_reading: GaugeReading) -> float:
    """Return the copper [m²] in the conductor `name`, a gauge being read as AWG or as SAE size.

    A metric size is its own area, as named. Raises NotCovered where no SAE area is published.
    """
    one = conductor(name)
    if GaugeReading(gauge_reading) is GaugeReading.AWG or one.series is Series.METRIC:
        return one.area
    if one.sae_area is None:
        raise NotCovered("gauge_reading", f"must be AWG for {name}: no SAE area is published.")
    return one.sae_area


def copper_of(name: str, gauge_reading: GaugeReading) -> Copper:
    """Return the copper in the conductor `name`. Raises NotCovered as `copper_area` does."""
    area = copper_area(name, gauge_reading)
    return Copper(conductor=name, gauge_reading=GaugeReading(gauge_reading), area=area)


def tabulated(name: str, *, finish: Finish, strands: Strands) -> float:
    """Return the published resistance [ohm/m] of one conductor at its own `reference`.

    `strands` chooses the class of a metric size and means nothing for a gauge, whose table has one
    stranding. Raises NotCovered.
    """
    one = conductor(name)
    pair = one.plain, one.tinned
    if Strands(strands) is Strands.STRANDED and one.stranded is not None:
        pair = one.stranded
    return pair[Finish(finish) is Finish.TINNED]


def resistance_per_length(
    name: str,
    temperature: float,
    *,
    finish: Finish,
    strands: Strands,
    gauge_reading: GaugeReading,
) -> float:
    """Return the resistance [ohm/m] of one conductor `name` at `temperature` [°C].

    Read as SAE, a gauge resists more by as much as it has less copper (SAE J1127 and J1128
    minimum areas against ASTM B258). Raises NotCovered where no SAE area is published.
    """
    one = conductor(name)
    at_reference = tabulated(name, finish=finish, strands=strands)
    read = at_reference * one.area / copper_area(name, gauge_reading)
    return at_temperature(read, one.reference, temperature)
