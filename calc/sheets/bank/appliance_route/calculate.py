"""The sum of appliance-route."""

from dataclasses import dataclass

from calc.energy import appliances
from calc.energy.battery import Chemistry
from calc.sheets.parts.fields import DIRECT, INVERTER
from calc.units.compare import at_least, at_most
from calc.worksheet.fields import Problem
from calc.worksheet.next_steps import Move

THERMOSTAT, BY_HAND = "thermostat", "by hand"
LABELS = "from labels"
CLOSE = 0.1  # of the larger, within which figures do not part the two: common practice, no source
HOUR = 3600.0  # s
SAGS = 0.9  # of the bank's voltage, taken as its lowest on the way on: common practice, no source
BUSY = 0.9  # of the time, beyond which a cold box has nothing in hand: common practice, no source


@dataclass(frozen=True, kw_only=True)
class ApplianceRoute:
    """Charge [A·s] and energy [J] from the bank in a day by each route, and what makes it up again.

    None where the household one takes less (`extra_…`) or more (`spared_charge`), and what heat
    does where nothing is kept cold.
    """

    day: float
    from_bank: float
    banked: float
    direct_banked: float
    dc_run: float
    dc_energy: float
    dc_charge: float
    ac_need: float
    ac_run: float
    off: float
    idle_energy: float
    idle_charge: float
    ac_energy: float
    ac_charge: float
    idle_share: float | None
    extra_charge: float | None
    spared_charge: float | None
    extra_bank: float | None
    extra_array: float | None
    extra_drive: float | None
    hot_factor: float | None
    dc_hot_run: float | None
    ac_hot_run: float | None
    dc_hot: float | None
    ac_hot: float | None
    year: float
    ac_year: float
    cold_kept: bool
    served: bool
    near: bool
    dc_hot_holds: bool
    ac_hot_holds: bool
    onward: tuple[Move, ...]


def run(
    *, dc_power: float, dc_duty: float, ac_power: float, ac_duty: float, idle: float, efficiency: float, voltage: float,
    use: str, figures: str, hours_on: float, carried: float, days: float, chemistry: Chemistry, usable: float,
    bank_efficiency: float, sun_hours: float, losses: float, charger: float, room: float, hot: float, cold: float,
) -> ApplianceRoute:
    """Return what each route takes in a day, fed for `hours_on` [s], `carried` [s] of it by others."""
    if not at_most(carried, hours_on):
        raise Problem("carried", "Hours of these fed by others must be no more than the hours it is fed.")
    day = appliances.DAY
    from_bank = hours_on - carried
    kept = use == THERMOSTAT
    banked = from_bank / hours_on
    direct_banked = (day - carried) / day if kept else banked
    factor = appliances.warmth_factor(room=room, hot=hot, cold=cold) if kept else None

    def direct(warmth: float) -> tuple[float, float]:
        time = appliances.running_time(duty=dc_duty * warmth, fed=day)
        return time, appliances.direct_energy(power=dc_power, running=time, banked=direct_banked)

    def household(warmth: float) -> tuple[float, float]:
        time = appliances.running_time(duty=ac_duty * warmth, fed=hours_on)
        return time, appliances.inverter_energy(
            power=ac_power, running=time, banked=banked, efficiency=efficiency, idle=idle, on=from_bank)

    dc_run, dc_energy = direct(1.0)
    ac_run, ac_energy = household(1.0)
    dc_hot_run, dc_hot_energy = direct(factor) if factor is not None else (None, None)
    ac_hot_run, ac_hot_energy = household(factor) if factor is not None else (None, None)
    dc_charge, ac_charge = dc_energy / voltage, ac_energy / voltage
    dearer = ac_charge >= dc_charge
    extra = ac_charge - dc_charge if dearer else None
    array, whole = None, f"{max(ac_power, 1):.6g} W"
    if extra is not None:
        array = appliances.array_for(energy=extra * voltage, efficiency=bank_efficiency, losses=losses, sun_time=sun_hours)
    return ApplianceRoute(
        day=day,
        from_bank=from_bank,
        banked=banked,
        direct_banked=direct_banked,
        dc_run=dc_run,
        dc_energy=dc_energy,
        dc_charge=dc_charge,
        ac_need=day * ac_duty,
        ac_run=ac_run,
        off=day - hours_on,
        idle_energy=idle * from_bank,
        idle_charge=idle * from_bank / voltage,
        ac_energy=ac_energy,
        ac_charge=ac_charge,
        idle_share=idle * from_bank / ac_energy if ac_energy else None,
        extra_charge=extra,
        spared_charge=None if dearer else dc_charge - ac_charge,
        extra_bank=None if extra is None else extra * days / usable,
        extra_array=array,
        extra_drive=None if extra is None else extra / (bank_efficiency * charger),
        hot_factor=factor,
        dc_hot_run=dc_hot_run,
        ac_hot_run=ac_hot_run,
        dc_hot=None if dc_hot_energy is None else dc_hot_energy / voltage,
        ac_hot=None if ac_hot_energy is None else ac_hot_energy / voltage,
        year=appliances.YEAR,
        ac_year=ac_power * day * ac_duty * appliances.YEAR,
        cold_kept=kept,
        served=at_most(day * ac_duty, hours_on),
        near=at_least(dc_charge, ac_charge * (1 - CLOSE)) and at_least(ac_charge, dc_charge * (1 - CLOSE)),
        dc_hot_holds=factor is None or at_most(dc_duty * factor, BUSY),
        ac_hot_holds=factor is None or at_most(day * ac_duty * factor, BUSY * hours_on),
        onward=(
            *(_week(name, chemistry, voltage, idle, efficiency, f"appliance:{power:.6g} W:{time / HOUR:.6g} h:all:{route}")
              for name, power, time, route in (("battery-voltage", dc_power, dc_run, DIRECT), ("household", ac_power, ac_run, INVERTER))),
            Move("The inverter that it would need", (
                ("running", whole), *((("motor", whole),) if kept else ()), ("surge", whole), ("efficiency", f"{efficiency * 100:.6g} %"),
                ("idle", f"{idle:.6g} W"), ("lowest_voltage", f"{SAGS * voltage:.6g} V"), ("voltage", f"{voltage:.6g} V"),
                ("hours_on", f"{from_bank / HOUR:.6g} h"), ("taken", f"{max(1, ac_power * ac_run * banked / HOUR):.6g} W·h"),
            ), "inverter-size"),
        ),
    )


def _week(name: str, chemistry: Chemistry, voltage: float, idle: float, efficiency: float, load: str) -> Move:
    """Return the way on to a week with this appliance alone; the reader adds what else is aboard."""
    texts = (("loads", load), ("chemistry", chemistry), ("voltage", f"{voltage:.6g} V"), ("idle", f"{idle:.6g} W"), ("efficiency", f"{efficiency * 100:.6g} %"))
    return Move(f"A week with the {name} one", texts, "week-ahead")
