"""Panels in series and in parallel: voltage in frost and in heat, current in bright light, fuses.

In scope: silicon panels of one kind, by the figures on their labels. Out of scope: strings of
unlike panels, electronics at each panel, and what the panels bring (`calc.energy.panels`).
"""

from dataclasses import dataclass
from functools import cache
from math import ceil, floor
from typing import Annotated

from calc.electrical import fuses
from calc.energy.panels import FULL_SUN, RATED_CELL, Array, CellHeat, Mount, Regulator, cell_heat
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Amperes,
    Celsius,
    Count,
    Kelvins,
    Number,
    Share,
    SharePerKelvin,
    Tag,
    Volts,
    Watts,
)

# Light brighter than standard: IEC 62548 (the factor K_I) and NEC 690.8(A)
BRIGHT_LIGHT: Annotated[Number, Tag("current in bright light over the label's")] = 1.25
# A string's fuse over the label's short-circuit current, at most: IEC 62548
FUSE_MOST: Annotated[Number, Tag("most a string's fuse may be over its short-circuit current")] = (
    2.4
)
# One or two need no fuses, for a panel stands what one other string gives: IEC 62548, NEC 690.9(A)
UNFUSED: Annotated[Count, Tag("strings in parallel that need no fuses")] = 2.0
STRING_FUSES = "cylinder, 10 by 38 mm (gPV)"  # the family made for strings, to IEC 60269-6


class Alike(Enumeration):
    """Whether the panels of an array are of one kind."""

    ALIKE = "alike"
    MIXED = "mixed"


@dataclass(frozen=True, kw_only=True)
class PanelLabel:
    """What a panel's label says, at standard test conditions.

    `voc` and `isc` are the open-circuit voltage and short-circuit current, `vmp` and `power` those
    at best power. `voc_fall` is the share of `voc` lost for each kelvin, None where not known,
    `power_fall` that of the power. `series_fuse` is the largest fuse that may stand before it.
    """

    voc: Volts
    vmp: Volts
    isc: Amperes
    power: Watts
    voc_fall: SharePerKelvin | None
    power_fall: SharePerKelvin
    series_fuse: Amperes | None

    @property
    def imp(self) -> Amperes:
        """The current at best power."""
        return self.power / self.vmp

    @property
    def agrees(self) -> bool:
        """Whether best power lies within open circuit and short circuit, as in every panel."""
        return self.vmp < self.voc and self.imp < self.isc

    @property
    def vmp_share(self) -> Share:
        """The voltage at best power as a share of that of an open circuit."""
        return self.vmp / self.voc

    @property
    def hot_fall(self) -> SharePerKelvin:
        """The share of `voc` lost for each kelvin of heat; that of the power is no less."""
        return self.power_fall if self.voc_fall is None else self.voc_fall


@dataclass(frozen=True, kw_only=True)
class InputLimits:
    """What a regulator takes from panels: `volts` at most, `amps` into a short if it says so.

    To charge it needs the battery's voltage and the `headroom` on top.
    """

    volts: Volts
    amps: Amperes | None
    headroom: Volts


@dataclass(frozen=True, kw_only=True)
class PanelString:
    """Panels in strings of `series`, `parallel` of them, in the coldest and the hottest hour.

    `cold_factor` is on the label's open-circuit voltage at `cold`; `heat` how hot the cells get.
    `string_fuse` is the fuse that stands in each string, None where there is none.
    """

    label: PanelLabel
    alike: Alike
    series: Count
    parallel: Count
    cold: Celsius
    cold_factor: Number
    array: Array
    heat: CellHeat
    limits: InputLimits
    string_fuse: Amperes | None

    @property
    def by_table(self) -> bool:
        """Whether no coefficient is known and NEC's table stands in."""
        return self.label.voc_fall is None

    @property
    def colder(self) -> Kelvins:
        """How much colder than the label's cells the coldest morning is."""
        return RATED_CELL - self.cold

    @property
    def cold_panel(self) -> Volts:
        """What one panel alone reaches, open, in the coldest hour."""
        return self.label.voc * self.cold_factor

    @property
    def cold_voc(self) -> Volts:
        """A string's open-circuit voltage on the coldest morning."""
        return self.series * self.cold_panel

    @property
    def hot_vmp(self) -> Volts:
        """A string's voltage at best power when hottest: all the power lost is lost in voltage."""
        return self.array.panel_voltage * self.heat.keeps

    @property
    def hot_voc(self) -> Volts:
        """A string's open-circuit voltage when hottest."""
        return self.series * self.label.voc * max(0.0, 1 - self.label.hot_fall * self.heat.over)

    @property
    def wanted(self) -> Volts:
        """What the regulator needs to charge."""
        return self.array.voltage + self.limits.headroom

    @property
    def most_series(self) -> Count:
        """How many panels in series the regulator takes on the coldest morning."""
        return float(floor(self.limits.volts / (self.label.voc * self.cold_factor) * (1 + 1e-9)))

    @property
    def least_series(self) -> Count | None:
        """How many in series it takes to charge when hottest; a plain switch has its own rule."""
        each = self.label.vmp * self.heat.keeps
        if self.array.regulator is Regulator.PWM or not each:
            return None
        return float(ceil(self.wanted / each * (1 - 1e-9)))

    @property
    def needed_series(self) -> Count | None:
        """How many in series it takes to charge at all when hottest; None if no number does.

        A plain switch needs the voltage at best power above the battery's, others the open one.
        """
        plain = self.array.regulator is Regulator.PWM
        each = self.label.vmp if plain else self.hot_voc / self.series
        return float(floor(self.array.voltage / each * (1 + 1e-9))) + 1 if each else None

    @property
    def array_isc(self) -> Amperes:
        """The short-circuit current of all strings, as on the label."""
        return self.parallel * self.label.isc

    @property
    def max_current(self) -> Amperes:
        """The most that the strings push through their cable, in bright light."""
        return BRIGHT_LIGHT * self.array_isc

    @property
    def nec_current(self) -> Amperes:
        """What NEC 690.8(B) sizes cable and fuse for: a quarter more, since it flows for hours."""
        return fuses.CONTINUOUS * self.max_current

    @property
    def reverse_current(self) -> Amperes | None:
        """What the other strings push backwards through one with a fault; None for a single one."""
        if self.parallel < UNFUSED:
            return None
        return (self.parallel - 1) * BRIGHT_LIGHT * self.label.isc

    @property
    def least_fuse(self) -> Amperes:
        """The smallest fuse that carries a string's current: NEC's quarter twice; IEC has 1.5."""
        return fuses.CONTINUOUS * BRIGHT_LIGHT * self.label.isc

    @property
    def most_fuse(self) -> Amperes:
        """The largest fuse that a string may have."""
        most = FUSE_MOST * self.label.isc
        return most if self.label.series_fuse is None else min(most, self.label.series_fuse)

    @property
    def fitting_fuse(self) -> Amperes | None:
        """The smallest standard fuse between the two, None where there is none."""
        family = fuses.named(STRING_FUSES)
        assert family is not None
        return fuses.rating_between(family.ratings, self.least_fuse, self.most_fuse)

    @property
    def needs_fuses(self) -> bool:
        """Whether more flows backwards through a string with a fault than its label allows."""
        back, most = self.reverse_current, self.label.series_fuse
        if back is None or most is None or self.parallel <= UNFUSED:
            return False
        return not at_most(back, most)

    @property
    def fuse(self) -> Amperes | None:
        """The fuse for each string, where they need one and one fits."""
        return self.fitting_fuse if self.needs_fuses else None

    @property
    def over_input(self) -> bool:
        """Whether the coldest morning brings more volts than the regulator takes."""
        return not at_most(self.cold_voc, self.limits.volts)

    @property
    def blocked_when_hot(self) -> bool:
        """Whether nothing flows when hottest: even the open voltage is not above the battery's."""
        return at_most(self.hot_voc, self.array.voltage)

    @property
    def low_when_hot(self) -> bool:
        """Whether a regulator that finds the best voltage is left below what it needs."""
        plain = self.array.regulator is Regulator.PWM
        return not plain and not at_least(self.hot_vmp, self.wanted)


@cache
def cold_factor(cold: float, voc_fall: float | None) -> float:
    """Return the factor on a label's open-circuit voltage at `cold` [°C].

    1 + β (25 °C − T) with the share `voc_fall` [1/K]; without one, NEC's table 690.7(A) for
    crystalline silicon. Raises NotCovered below the table, which ends at −40 °C.
    """
    if voc_fall is not None:
        return 1 + voc_fall * (RATED_CELL - cold)
    rows = table("panel_cold_nec").rows
    for row in rows:
        if at_least(cold, float(row["down_to_c"])):
            return float(row["factor"])
    last = rows[-1]["down_to_c"].replace("-", "−")
    accepted = (
        f"must be {last} °C or warmer without a coefficient, like −20 °C: the table ends there."
    )
    raise NotCovered("cold", accepted)


def panel_string(
    *,
    label: PanelLabel,
    alike: Alike,
    series: float,
    parallel: float,
    cold: float,
    hot_air: float,
    mount: Mount,
    regulator: Regulator,
    voltage: float,
    current: float | None,
    limits: InputLimits,
    string_fuse: float | None,
) -> PanelString:
    """Return what `parallel` strings of `series` panels each do at a regulator.

    `cold` [°C] is the coldest morning, when cells are as cold as the air before the sun warms them,
    `hot_air` [°C] the hottest day; `voltage` [V] that of the battery's charge, `current` [A] the
    regulator's rated output, if it is known. IEC 62548, NEC 690.7 to 690.9. Raises NotCovered.
    """
    array = Array(
        power=series * parallel * label.power,
        losses=0.0,
        voltage=voltage,
        regulator=Regulator(regulator),
        panel_voltage=series * label.vmp,
        air=hot_air,
        mount=Mount(mount),
        heat_coefficient=label.power_fall,
        limit=current,
    )
    heat = cell_heat(array=array, bright=FULL_SUN)
    assert heat is not None  # the air is given
    return PanelString(
        label=label,
        alike=Alike(alike),
        series=series,
        parallel=parallel,
        cold=cold,
        cold_factor=cold_factor(cold, label.voc_fall),
        array=array,
        heat=heat,
        limits=limits,
        string_fuse=string_fuse,
    )
