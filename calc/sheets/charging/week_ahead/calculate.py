"""The sum of week-ahead: a week of hours, then the months and the changes that would carry it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from calc.energy import battery, charging, remedies
from calc.energy.balance import HOUR, HOURS
from calc.energy.battery import Chemistry
from calc.energy.remedies import Remedy
from calc.energy.sun import LOW_SUN
from calc.energy.sun import Month as MonthOfYear
from calc.energy.week import ALWAYS as ANY_HOUR
from calc.energy.week import DAYS, RATED_TIME, STANDARD, Load, Plan
from calc.sheets.charging.week_ahead.words import (
    Brought,
    Change,
    Lost,
    Month,
    OneDay,
    change,
    said,
    then,
)
from calc.sheets.parts.fields import INVERTER
from calc.units.compare import at_least, at_most
from calc.worksheet.fields import Problem

MONTHS = tuple(MonthOfYear)
NONE = "None of the changes tried here carries it alone: put several together."
NO_CHARGE = "At this temperature it takes no charge, so no source helps: bring it within its limits first."
ALWAYS_ON, WHILE_USED = "day and night", "while used"
LOST = ("Inverter, conversion", "Inverter, idle", "Charging the bank", "Heavy current", "Bank by itself", "Sun not taken")


@dataclass(frozen=True, kw_only=True)
class WeekAhead:
    """A week of a bank: states [0..1], energies [J] on the bus, times [s] from the first midnight.

    `months`, `carrying`, `remedies` and `cheapest` are None until they are worked out.
    """

    plan: Plan
    floor: float
    cold_factor: float
    cold_capacity: float
    full_energy: float
    coulombic: float
    energy_efficiency: float
    charge_voltage: float
    bulk_current: float
    exponent: float
    rated_time: float
    rated_current: float
    on_plane: float
    clear_sky: float
    seen: float
    even_light: float
    light: float
    noon: float
    daylight: float
    standard: float
    sun_day: float
    drive_day: float
    shore_night: float
    loads_day: float
    inverter_day: float
    daily_use: float
    peak_current: float
    hourly: tuple[float, ...]
    nights: tuple[tuple[float, float], ...]
    sun_hourly: tuple[float, ...]
    drive_hourly: tuple[float, ...]
    shore_hourly: tuple[float, ...]
    load_hourly: tuple[float, ...]
    sun_brought: float
    drive_brought: float
    shore_brought: float
    drawn: float
    came: float
    load_used: float
    load_taken: float
    conversion: float
    idle_lost: float
    charging_lost: float
    heavy: float
    stored: float
    went: float
    alone: float
    not_taken: float
    unmet: float | None
    lowest_state: float
    lowest_at: float
    fullest: float
    end_state: float
    empty_after: float | None
    lasts: float | None
    outlook: str
    brought: tuple[Brought, ...]
    lost: tuple[Lost, ...]
    days: tuple[OneDay, ...]
    months: tuple[Month, ...] | None
    carrying: tuple[Change, ...] | None
    remedies: tuple[Change, ...] | None
    cheapest: str | None
    way_out: str
    below: bool
    charges: bool
    holds: bool
    lead_acid: bool
    starts_alone: bool
    forced: bool
    low_sun: bool


def run(
    *, capacity: float, chemistry: Chemistry, from_state: float, loads: tuple[Mapping[str, Any], ...], array: float, latitude: float,
    month: str, sky: float, drive_hours: float, charger: float, shore_every: float, usable: float, voltage: float,
    temperature: float, efficiency: float, idle: float, inverter_on: str, tilt: float, facing: float, losses: float,
    turbidity: float, altitude: float, shore_charger: float, shore_hours: float,
) -> WeekAhead:
    """Return the week of a bank of `capacity` [A·s] from `from_state` [0..1] with these loads and sources."""
    plan = Plan(
        capacity=capacity, chemistry=chemistry, from_state=from_state, usable=usable, voltage=voltage, temperature=temperature,
        loads=tuple(Load(one["name"], one["watts"], one["hours"], one["when"], one["route"] == INVERTER) for one in loads),
        efficiency=efficiency, idle=idle, always=inverter_on == ALWAYS_ON, array=array, latitude=latitude,
        month=MONTHS.index(month) + 1, sky=sky, losses=losses, tilt=tilt, facing=facing, turbidity=turbidity,
        altitude=altitude, drive_hours=drive_hours, charger=charger, shore_every=int(shore_every), lead=shore_charger,
        lead_hours=shore_hours,
    )
    try:
        bank, day, week, later = plan.bank, plan.day, plan.week, plan.outlook
    except ValueError:
        raise Problem("temperature", f"Battery temperature must be {battery.coldest():.1f} °C or more for lead-acid: the published factors end there.") from None
    hours, states = week.hours, week.states
    served = [(one.served, at % HOURS) for at, one in enumerate(hours)]
    conversion = sum(share * day.conversion[at] for share, at in served)
    idle_lost = sum(share * day.idle[at] for share, at in served)
    load_used = sum(share * day.useful[at] for share, at in served)
    unmet = sum((1.0 - share) * day.useful[at] for share, at in served)
    stored, drawn = sum(one.stored for one in hours), sum(one.drawn for one in hours)
    charging_lost, heavy = sum(one.charging for one in hours), sum(one.heavy for one in hours)
    alone = sum(one.alone for one in hours)
    sun, drive, shore = sum(week.sun), sum(week.drive), sum(week.shore)
    not_taken = sum(day.sun[at % HOURS] - taken for at, taken in enumerate(week.sun))
    leads = sum(sum(day.lead(number, plan.shore_every)) for number in range(DAYS))
    load_hourly = tuple(share * plan.day.demand[at] for share, at in served)
    lost = (conversion, idle_lost, charging_lost, heavy, alone, not_taken)
    below = at_floor(from_state, bank.floor)
    return WeekAhead(
        plan=plan, floor=bank.floor, cold_factor=plan.cold, cold_capacity=bank.capacity, full_energy=bank.full,
        coulombic=bank.coulombic, energy_efficiency=bank.energy, charge_voltage=bank.charge_voltage, bulk_current=bank.most,
        exponent=plan.exponent, rated_time=RATED_TIME, rated_current=bank.capacity / RATED_TIME,
        on_plane=plan.sun.on_plane, clear_sky=plan.sun.horizontal, seen=plan.seen, even_light=plan.sun.horizontal * plan.seen,
        light=plan.light, noon=plan.sun.noon, daylight=plan.sun.daylight, standard=STANDARD, sun_day=sum(day.sun),
        drive_day=sum(day.drive), shore_night=sum(day.evening) + sum(day.morning), loads_day=sum(day.useful),
        inverter_day=sum(day.conversion) + sum(day.idle), daily_use=sum(day.demand),
        peak_current=_peak(plan), hourly=states, nights=_nights(plan), sun_hourly=week.sun, drive_hourly=week.drive,
        shore_hourly=week.shore, load_hourly=load_hourly, sun_brought=sun, drive_brought=drive, shore_brought=shore,
        drawn=drawn, came=sun + drive + shore + drawn, load_used=load_used, load_taken=sum(load_hourly),
        conversion=conversion, idle_lost=idle_lost, charging_lost=charging_lost, heavy=heavy, stored=stored,
        went=sum(load_hourly) + heavy + charging_lost + stored, alone=alone, not_taken=not_taken, unmet=unmet or None,
        lowest_state=min(states), lowest_at=states.index(min(states)) * HOUR, fullest=max(states[HOURS:]),
        end_state=states[-1], empty_after=week.emptied, lasts=later.empty, outlook=said(later),
        brought=(
            Brought(name="Sun", offered=DAYS * sum(day.sun), brought=sun),
            Brought(name="Driving", offered=DAYS * sum(day.drive), brought=drive),
            Brought(name="Lead from the shore", offered=leads, brought=shore),
        ),
        lost=tuple(Lost(name=name, energy=energy) for name, energy in zip(LOST, lost, strict=True)),
        days=tuple(_one_day(number, states, (week.sun, week.drive, week.shore), load_hourly) for number in range(DAYS)),
        months=None, carrying=None, remedies=None, cheapest=None, way_out="What would carry it is still being worked out.", below=below,
        charges=bank.charges, holds=later.holds, lead_acid=chemistry.lead_acid,
        starts_alone=not plan.always and any(load.inverter and load.energy and load.when == ANY_HOUR for load in plan.loads),
        forced=not at_most(_charger(plan), charging.by_chemistry(chemistry).most * capacity),
        low_sun=later.holds and sun > 0.0 and not at_least(plan.sun.noon, LOW_SUN) and not replace(plan, array=0.0).outlook.holds,
    )


def rest(found: WeekAhead) -> Iterator[tuple[float, WeekAhead]]:
    """Yield the share done and the week with the months, then with the changes that carry it."""
    plan, months = found.plan, list[Month]()
    for number, name in enumerate(MONTHS, 1):
        other = plan.in_month(number)
        months.append(Month(name=name, sun=sum(other.day.sun), empty=other.outlook.empty, outlook=said(other.outlook)))
        yield 0.5 * number / len(MONTHS), found
    found = replace(found, months=tuple(months))
    tried: list[Remedy] = []
    if found.empty_after is not None:
        for number, remedy in enumerate(remedies.remedies(plan), 1):
            tried.append(remedy)
            yield 0.5 + 0.5 * number / (number + 1), found
    changes = tuple(change(plan, remedy) for remedy in remedies.ranked(tried))
    carrying = tuple(one for one in changes if one.works)
    best = carrying[0] if carrying else None
    way_out = f"What asks least: {best}; then {then(best)}." if best else NONE if plan.bank.charges else NO_CHARGE
    yield 1.0, replace(
        found, carrying=carrying, remedies=changes, cheapest=str(best) if best else None, way_out=way_out
    )


def at_floor(state: float, floor: float) -> bool:
    """Return whether a bank at `state` has nothing left that the plan would use."""
    return state <= floor + 1e-12


def _charger(plan: Plan) -> float:
    """Return the current [A] of the strongest charger that is put to use."""
    return max(plan.charger if plan.drive_hours else 0.0, plan.lead if plan.shore_every and plan.lead_hours else 0.0)


def _peak(plan: Plan) -> float:
    """Return the current [A] with every load on at once."""
    fed = sum(load.watts for load in plan.loads if load.inverter and load.energy)
    direct = sum(load.watts for load in plan.loads if not load.inverter and load.energy)
    return (direct + (fed / plan.efficiency + plan.idle if fed else 0.0)) / plan.voltage


def _nights(plan: Plan) -> tuple[tuple[float, float], ...]:
    """Return the start and end [s] of each night of the week, by the hours that hold for loads."""
    light = sum(plan.daylight) * HOUR
    rises = 12 * HOUR - light / 2 if 0.0 < plan.sun.daylight < HOURS * HOUR else 6 * HOUR
    sets, whole = rises + light, HOURS * HOUR
    between = [(sets + number * whole, rises + (number + 1) * whole) for number in range(DAYS - 1)]
    return ((0.0, rises), *between, (sets + (DAYS - 1) * whole, DAYS * whole))


def _one_day(
    number: int, states: tuple[float, ...], sources: tuple[tuple[float, ...], ...], loads: tuple[float, ...]
) -> OneDay:
    first, last = number * HOURS, (number + 1) * HOURS
    own = states[first : last + 1]
    return OneDay(
        name=f"Day {number + 1}", lowest=min(own), highest=max(own), end=own[-1],
        brought=sum(sum(source[first:last]) for source in sources), taken=sum(loads[first:last]),
    )


