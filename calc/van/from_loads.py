"""What the loads of a van say for worksheets: their power, and what a day takes."""

from __future__ import annotations

from collections.abc import Iterable

from calc.units.constants import DAY
from calc.van.came import Came, hours, key_of, key_of_kind, unknown, watt_hours, watts
from calc.van.from_bank import bank_voltage
from calc.van.record import Part, Van
from calc.van.values import State
from calc.van.worked import attempted
from calc.worksheet.rows import joined

NO_POWER = "0 W"
HEATING, COOLING = "heater-fan", "cooler"  # loads that run only where a pattern says so
RESISTIVE = ("resistive-heat", "water-heater", "hob")
INVERTER = "inverter"
ALWAYS_ON = "day-and-night"
BY_ITSELF = ("fridge", "household-appliance", "pump", "fan")  # loads that start at any hour


def power_of(van: Van, part: Part) -> Came:
    """Return the power of a circuit: as it stands, or its current at the bank's voltage."""
    own = key_of(part, "power")
    if own is not None and own.text:
        return own
    current = part.si("current") if "current" in part.values else None
    if current is None:
        return unknown(f"{part.place}.power")
    at = bank_voltage(van, part)
    return watts(current * at.si, f"{part.place}.current") if at.si else at


def load_power(van: Van, part: Part | None) -> Came | None:
    """The power of a circuit: as it stands, or its current at the bank's voltage."""
    return power_of(van, part) if part is not None and "power" in part.values else None


def load_type(van: Van, part: Part | None) -> Came | None:
    """Whether a load is resistive heat."""
    if part is None or part.choice("load") is None:
        return None
    heat = part.choice("load") in RESISTIVE
    return Came("resistive heat" if heat else "any load", f"{part.place}.load")


def duty(van: Van, part: Part | None) -> Came | None:
    """The share of a day that a circuit draws its power."""
    if part is None:
        return None
    on = part.si("hours")
    text = "" if on is None else f"{100 * on / DAY:.6g} %"
    return Came(text, f"{part.place}.hours")


def _day(van: Van, part: Part | None) -> Iterable[Part]:
    """Return the circuits that count in a pattern of use, or in none."""
    pattern = part if part is not None and part.kind.id == "patterns" else None
    for one in van.all("circuits"):
        load = one.choice("load")
        if pattern is not None and load == HEATING and pattern.choice("heats") == "no":
            continue
        if pattern is not None and load == COOLING and pattern.choice("cools") == "no":
            continue
        yield one


def _through_inverter(van: Van, found: Iterable[Part], energy: float) -> float | Came:
    """Return what the bank gives [J] for `energy` behind the inverter, its own draw on top."""
    inverter = van.one("inverter")
    if inverter is None:
        return unknown("inverter")
    efficiency, idle = inverter.si("efficiency"), inverter.si("idle")
    always = inverter.choice("inverter_on")
    if efficiency is None or idle is None or always is None:
        names = (("efficiency", efficiency), ("idle", idle), ("inverter_on", always))
        return unknown(f"inverter.{next(name for name, value in names if value is None)}")
    longest = max((one.si("hours") or 0.0 for one in found), default=0.0)
    return energy / efficiency + idle * (DAY if always == ALWAYS_ON else longest)


def daily_energy(van: Van, part: Part | None) -> Came:
    """What the circuits take from the bank in a day, an inverter's loss and own draw on top."""
    direct = inverted = 0.0
    by_inverter = []
    for one in _day(van, part):
        power, route = power_of(van, one), one.choice("route")
        if power.si is None:
            return power
        on = one.si("hours")
        if on is None or route is None:
            return unknown(f"{one.place}.{'hours' if on is None else 'route'}")
        if route == INVERTER:
            by_inverter.append(one)
            inverted += power.si * on
        else:
            direct += power.si * on
    if by_inverter:
        taken = _through_inverter(van, by_inverter, inverted)
        if isinstance(taken, Came):
            return taken
        direct += taken
    return watt_hours(direct, "circuits") if direct else unknown("circuits")


_COLUMNS = ("hours", "when", "route")


def _heater(van: Van, part: Part) -> list[str] | Came:
    """Return the row of a heater that no circuit stands for, or what of it is not known."""
    heater = van.one("heater")
    if heater is None:
        return unknown("heater")
    for name in ("draw", "hours"):
        if not heater[name].known:
            return unknown(f"{heater.place}.{name}")
    return ["heater", heater.text("draw"), heater.text("hours"), "night"]


def _cooler(van: Van, part: Part) -> list[str] | Came:
    cooler = van.one("cooler")
    if cooler is None:
        return unknown("cooler")
    found = []
    for name in ("cooling", "efficiency_ratio", "hours"):
        value = cooler.si(name)
        if value is None:
            return unknown(f"{cooler.place}.{name}")
        found.append(value)
    cooling, ratio, on = found
    share = _share_of_time(van, cooler, part)
    if isinstance(share, Came):
        return share
    route = cooler.choice("route")
    if route is None:
        return unknown(f"{cooler.place}.route")
    power = watts(cooling / ratio * share, cooler.place)
    return ["air conditioner", power.text, hours(on), "day", route]


def _share_of_time(van: Van, cooler: Part, part: Part) -> float | Came:
    """Return how much of the time a cooler runs: as stated, or as its worksheet has it."""
    from calc.van.bind import filled

    stated = cooler.si("duty")
    if stated is not None:
        return stated
    own = filled(van, "cooling-day", part)
    if own.lacking:
        return unknown(own.missing[own.lacking[0]])
    found = attempted("cooling-day", own.texts)
    return float(found.values["duty_used"]) if found else unknown(f"{cooler.place}.duty")


def _when(one: Part) -> str:
    """Return when a load runs: what is switched by hand on an inverter does so by day, usually."""
    usual = one["when"].state is State.DEFAULT
    by_hand = one.choice("load") not in BY_ITSELF and one.choice("switch") != "thermostat"
    if usual and by_hand and one.choice("route") == INVERTER:
        return "day"
    return one.text("when")


def daily_loads(van: Van, part: Part | None) -> Came:
    """The loads of a day in a pattern: its own list, or the circuits, heater and cooler."""
    if part is not None and "loads" in part.values and part["loads"].known:
        return Came(part.text("loads"), f"{part.place}.loads")
    rows: list[list[str]] = []
    there = set()
    for one in _day(van, part):
        power = power_of(van, one)
        if not power.text:
            return power
        for name in _COLUMNS:
            if not one[name].known:
                return unknown(f"{one.place}.{name}")
        there.add(one.choice("load"))
        rows.append([one.name, power.text, one.text("hours"), _when(one), one.text("route")])
    if part is not None and part.kind.id == "patterns":
        for key, load, row_of in (("heats", HEATING, _heater), ("cools", COOLING, _cooler)):
            if part.choice(key) == "yes" and load not in there:
                row = row_of(van, part)
                if isinstance(row, Came):
                    return row
                rows.append(row)
    return Came(joined(rows), "circuits")


def inverter_energy(van: Van, part: Part | None) -> Came | None:
    """What is taken through the inverter in a day."""
    total = 0.0
    for one in van.all("circuits"):
        if one.choice("route") == INVERTER:
            power, on = power_of(van, one), one.si("hours")
            if power.si is None:
                return power
            if on is None:
                return unknown(f"{one.place}.hours")
            total += power.si * on
    return watt_hours(total, "circuits") if total else None


def inverter_hours(van: Van, part: Part | None) -> Came | None:
    """How long the inverter is on in a day: all of it, or as long as its loads are used."""
    inverter = van.one("inverter")
    if inverter is None or not inverter["inverter_on"].known:
        return key_of_kind(van, "inverter", "inverter_on")
    place = f"{inverter.place}.inverter_on"
    if inverter.choice("inverter_on") == ALWAYS_ON:
        return Came(hours(DAY), place)
    together = 0.0
    for one in van.all("circuits"):
        if one.choice("route") == INVERTER:
            on = one.si("hours")
            if on is None:
                return unknown(f"{one.place}.hours")
            together += on
    return Came(hours(min(DAY, together)), place) if together else None


def heaviest_power(van: Van, part: Part | None) -> Came | None:
    """The heaviest load at one time: the inverter at its rating, where there is one."""
    return key_of_kind(van, "inverter", "rating")


def inverter_idle(van: Van, part: Part | None) -> Came | None:
    """What the inverter draws by itself, nothing where there is none."""
    if van.stated("inverter") is State.NONE:
        return Came(NO_POWER, "inverter")
    return key_of_kind(van, "inverter", "idle")
