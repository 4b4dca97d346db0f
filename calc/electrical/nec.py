"""NEC 310.16: the ampacity of wiring on the mains side, with its own corrections.

Conditions: insulated copper, not more than three loaded conductors in a raceway, cable or earth,
air of 30 °C, insulation of 60, 75 or 90 °C. The 90 °C column is for corrections only: 110.14(C)
takes no terminal as hotter than 75 °C, nor one for up to 100 A or 1 AWG as hotter than 60 °C unless
it is marked. Factors are the printed ones, by band; the credit that
the code gives for air cooler than 30 °C is not taken.
"""

from functools import cache
from math import inf
from typing import Annotated

from calc.electrical.conductors import row_area
from calc.tables import table
from calc.units.compare import at_most
from calc.units.covered import NotCovered
from calc.units.si import Celsius, Tag

TABLE = "NEC 310.16"
RATINGS = (60.0, 75.0, 90.0)  # °C
# 110.14(C)(1)(a)
COOL_TERMINAL: Annotated[Celsius, Tag("terminals up to 100 A without a marking")] = 60.0
# 110.14(C)(1)(b)
TERMINAL: Annotated[Celsius, Tag("hottest that NEC takes terminals for")] = 75.0
COOL_SIZE = "1 AWG"  # (a) holds up to 100 A and for terminals of up to this size


@cache
def rows() -> dict[tuple[str, float], float]:
    """Return the ampacity [A] by gauge (`8`) and insulation [°C]."""
    return {
        (row["awg"], float(row["insulation_c"])): float(row["ampacity_a"])
        for row in table("ampacity_nec_310_16").rows
    }


@cache
def _bands(insulation: float) -> tuple[tuple[float, float], ...]:
    return tuple(
        (float(row["to_c"]), float(row["factor"]))
        for row in table("ambient_nec").rows
        if float(row["insulation_c"]) == insulation
    )


def ambient_factor(insulation: float, air: float) -> float:
    """Return the printed factor of 310.15(B)(1) for `air` [°C], at most 1.

    Raises NotCovered for air hotter than the last band printed for the `insulation` [°C].
    """
    for top, factor in _bands(insulation):
        if at_most(air, top):
            return min(1.0, factor)
    last = _bands(insulation)[-1][0]
    raise NotCovered(
        "ambient",
        f"must be {last:g} °C or less for {insulation:g} °C insulation under {TABLE}: "
        "no factor is printed for hotter air.",
    )


@cache
def bundle_factor(bundled: float) -> float:
    """Return the printed share of 310.15(C)(1) for `bundled` loaded conductors together."""
    for row in table("bundling_nec").rows:
        last = float(row["to_conductors"]) if row["to_conductors"] else inf
        if float(row["from_conductors"]) <= bundled <= last:
            return float(row["percent"]) / 100
    return 1.0


@cache
def small_ceiling(gauge: str) -> float | None:
    """Return the largest overcurrent device [A] of 240.4(D) for a small `gauge` (`12`), or None."""
    for row in table("small_conductors_nec").rows:
        if row["awg"] == gauge:
            return float(row["largest_a"])
    return None


@cache
def terminal_ceiling(gauge: str, insulation: float) -> float | None:
    """Return the figure [A] of the 75 °C column for a `gauge` whose insulation [°C] is hotter.

    None where the insulation is no hotter, where 240.4(D) holds the fuse lower anyway, or where the
    column has no figure. Not corrected for air and bundles: those heat the wire, and its own
    corrected ampacity counts them.
    """
    if insulation <= TERMINAL or small_ceiling(gauge) is not None:
        return None
    return rows().get((gauge, TERMINAL))


@cache
def in_cool_terminals(name: str) -> bool:
    """Return whether unmarked terminals for the gauge `name` (`8 AWG`) are taken as 60 °C.

    By its size alone: what is thicker than 1 AWG bears more than 100 A by the 60 °C column anyway.
    """
    return row_area(name) <= row_area(COOL_SIZE)


@cache
def cool_terminals(gauge: str) -> float | None:
    """Return the most [A] that terminals of 60 °C let a `gauge` carry (`8`).

    The figure of its 60 °C column, uncorrected; None where there is none.
    """
    return rows().get((gauge, COOL_TERMINAL))


@cache
def standard_ratings() -> tuple[float, ...]:
    """Return the standard ratings [A] of fuses and breakers of 240.6(A), smallest first."""
    return tuple(float(row["rating_a"]) for row in table("standard_ratings_nec").rows)
