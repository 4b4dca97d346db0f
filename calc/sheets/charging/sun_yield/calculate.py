"""sun-yield from its fields: a usual day of the month asked for, and of the others beside it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calc.energy import battery, panels
from calc.energy.battery import BankWarmth, Chemistry, ColdCutOff
from calc.energy.cloud import Sky, Station, stations, usual_sky
from calc.energy.panels import (
    Array,
    Loss,
    Mount,
    Regulator,
    SolarYield,
    solar_yield,
    through_bank,
)
from calc.energy.sun import Month, day_on_plane
from calc.sheets.parts.sun import monthly_sky
from calc.units.si import Coulombs, Joules, JoulesPerSquareMetre, Share


@dataclass(frozen=True, kw_only=True)
class MonthRow:
    """The 15th of one month: sums of a clear day, and what a usual day gives."""

    month: Month
    extraterrestrial: JoulesPerSquareMetre
    on_plane: JoulesPerSquareMetre
    sky: Share
    energy: Joules
    charge: Coulombs


@dataclass(frozen=True, kw_only=True)
class SunYield:
    """The usual day, the bank that it charges, the year around it, measured stations, usual losses."""

    usual: SolarYield
    bank: BankWarmth
    months: tuple[MonthRow, ...]
    best_month: Month
    worst_month: Month
    worst_energy: Joules
    usual_loss: Share
    loss_parts: tuple[Loss, ...]
    skies: tuple[Station, ...]
    typed_sky: bool


def calculate(
    *,
    latitude: float,
    month: Month,
    array: float,
    tilt: float,
    facing: float,
    sky: float,
    climate: str,
    own_skies: tuple[Mapping[str, Any], ...],
    daily_use: float | None,
    chemistry: Chemistry,
    stored: float,
    voltage: float,
    losses: float,
    sunshine: float | None,
    regulator_limit: float | None,
    regulator: Regulator,
    panel_voltage: float,
    air: float | None,
    mount: Mount,
    heat_coefficient: float,
    turbidity: float,
    altitude: float,
    albedo: float,
    temperature: float,
    cold_cut_off: ColdCutOff,
) -> SunYield:
    """Return what `array` [W] at `latitude` [deg] brings on the 15th of `month`, and in the year.

    It charges a bank of a `chemistry` at `temperature` [°C].

    Raises NotCovered for more `sunshine` than daylight.
    """
    roof = Array(
        power=array,
        losses=losses,
        voltage=voltage,
        regulator=regulator,
        panel_voltage=panel_voltage,
        air=air,
        mount=mount,
        heat_coefficient=heat_coefficient,
        limit=regulator_limit,
    )
    clear = {
        one: day_on_plane(
            latitude=latitude,
            day_of_year=one.mid_day,
            tilt=tilt,
            facing=facing,
            turbidity=turbidity,
            altitude=altitude,
            albedo=albedo,
        )
        for one in Month
    }
    monthly = monthly_sky(climate, own_skies, sky)
    typed = usual_sky(share=sky, sunshine=sunshine, daylight=clear[month].daylight)
    bank = through_bank(chemistry=chemistry, charge_voltage=voltage, stored=stored)

    def sky_of(one: Month) -> Sky:
        if monthly is None or (sunshine is not None and one is month):
            return typed
        share = monthly.share(one, clear[one])
        measured = monthly.clearness is not None
        return Sky(
            share=sky, sunshine=None, daylight=clear[one].daylight, used=share, measured=measured
        )

    year = [
        solar_yield(
            array=roof, month=one, clear=day, sky=sky_of(one), daily_use=daily_use, bank=bank
        )
        for one, day in clear.items()
    ]
    worst = min(year, key=lambda one: one.energy)
    return SunYield(
        usual=year[month.number - 1],
        bank=battery.warmth(chemistry=chemistry, temperature=temperature, cut_off=cold_cut_off),
        months=tuple(
            MonthRow(
                month=one.month,
                extraterrestrial=one.clear.extraterrestrial,
                on_plane=one.clear.on_plane,
                sky=one.sky.used,
                energy=one.energy,
                charge=one.charge,
            )
            for one in year
        ),
        best_month=max(year, key=lambda one: one.energy).month,
        worst_month=worst.month,
        worst_energy=worst.energy,
        usual_loss=panels.combined_loss(tuple(one.share for one in panels.usual_losses())),
        loss_parts=panels.usual_losses(),
        skies=stations(month),
        typed_sky=monthly is None,
    )
