"""sun-yield from its fields: a usual day of the month asked for, and of the others beside it."""

from dataclasses import dataclass

from calc.energy import battery, panels
from calc.energy.battery import BankWarmth, Chemistry, ColdCutOff
from calc.energy.cloud import Station, stations, usual_sky
from calc.energy.panels import Array, Loss, Mount, Regulator, SolarYield, solar_yield
from calc.energy.sun import Month, day_on_plane
from calc.units.si import Coulombs, Joules, JoulesPerSquareMetre, Share


@dataclass(frozen=True, kw_only=True)
class MonthRow:
    """The 15th of one month: sums of a clear day, and what a usual day gives."""

    month: Month
    extraterrestrial: JoulesPerSquareMetre
    on_plane: JoulesPerSquareMetre
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


def calculate(
    *,
    latitude: float,
    month: Month,
    array: float,
    tilt: float,
    facing: float,
    sky: float,
    daily_use: float | None,
    voltage: float,
    losses: float,
    sunshine: float | None,
    regulator: Regulator,
    panel_voltage: float,
    air: float | None,
    mount: Mount,
    heat_coefficient: float,
    turbidity: float,
    altitude: float,
    albedo: float,
    chemistry: Chemistry,
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
    usual = usual_sky(share=sky, sunshine=sunshine, daylight=clear[month].daylight)
    year = [
        solar_yield(array=roof, month=one, clear=day, sky=usual, daily_use=daily_use)
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
    )
