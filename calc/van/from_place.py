"""What bay, alarms, mains, switches, water and joints of a van say for worksheets."""

from __future__ import annotations

from calc.van.came import Came, key_of, key_of_kind, unknown, watts
from calc.van.from_bank import bank_voltage, charging_voltage
from calc.van.from_loads import INVERTER, RESISTIVE, load_power
from calc.van.from_sources import pattern_of
from calc.van.record import Part, Van
from calc.van.values import State
from calc.van.worked import attempted
from calc.worksheet.rows import joined

RETURNS = {"cable": "own wire", "chassis": "the body"}
MOTORS = ("pump", "fan", "motor", "cooler", "fridge", "heater-fan")


def _inverter_heat(van: Van) -> Came | None:
    """Return the heat of the inverter at its rating; None where there is none."""
    one = van.one("inverter")
    if one is None:
        return None if van.stated("inverter") is State.NONE else unknown("inverter")
    rating, efficiency = one.si("rating"), one.si("efficiency")
    if rating is None or efficiency is None:
        return unknown(f"{one.place}.{'rating' if rating is None else 'efficiency'}")
    return watts(rating * (1 / efficiency - 1), f"{one.place}.rating")


def _charger_heat(van: Van, kind: str, name: str) -> Came | None:
    """Return the heat of a charger at its rating; None where there is none."""
    one, at = van.one(kind), charging_voltage(van, None)
    if one is None:
        return None if van.stated(kind) is State.NONE else unknown(kind)
    if kind == "alternator" and one.choice("method") == "relay":
        return None
    current, efficiency = one.si(name), one.si("charger_efficiency")
    if current is None or efficiency is None:
        return unknown(f"{one.place}.{name if current is None else 'charger_efficiency'}")
    if at.si is None:
        return at
    return watts(current * at.si * (1 / efficiency - 1), f"{one.place}.{name}")


def bay_heat(van: Van, part: Part | None) -> Came:
    """The heat in the bay: the inverter at its rating, and the charger that loses the most."""
    chargers = [
        _charger_heat(van, "alternator", "charger_limit"),
        _charger_heat(van, "shore", "charger"),
    ]
    found = [one for one in (*chargers, _inverter_heat(van)) if one is not None]
    for one in found:
        if one.si is None:
            return one
    heat = max((one.si or 0.0 for one in chargers if one), default=0.0)
    heat += sum(one.si or 0.0 for one in found if one not in chargers)
    return watts(heat, found[-1].place) if heat else unknown("bay")


def bay_vents(van: Van, part: Part | None) -> Came | None:
    """The vents of the bay."""
    bay = van.one("bay")
    if bay is not None and bay["vents"].state is State.NONE:
        return Came("0 cm²", f"{bay.place}.vents")
    return key_of_kind(van, "bay", "vents")


def co_alarm(van: Van, part: Part | None) -> Came:
    """Whether an alarm for carbon monoxide is fitted and sounded when it was tested."""
    if van.stated("alarms") is State.NONE:
        return Came("not fitted", "alarms")
    found = [one for one in van.all("alarms") if one.choice("kind") == "co"]
    if not found:
        sure = bool(van.all("alarms")) and all(one["kind"].known for one in van.all("alarms"))
        return Came("not fitted" if sure else "", "alarms")
    tested = [one.choice("tested") for one in found]
    place = f"{found[0].place}.tested"
    if "sounded" in tested:
        return Came("fitted and tested", place)
    return Came("not fitted" if None not in tested else "", place)


def monitor(van: Van, part: Part | None) -> Came | None:
    """The battery monitor."""
    if van.stated("monitor") is State.NONE:
        return Came("no-monitor", "monitor")
    return key_of_kind(van, "monitor", "monitor")


def residual(van: Van, part: Part | None) -> Came | None:
    """The residual-current device."""
    if van.stated("mains") is State.NONE:
        return None
    return key_of_kind(van, "mains", "residual")


_OF_THE_NIGHT = ("outside", "heater_output", "fuel", "hours", "draw")  # no matter for the shell
FEEDS = {
    "changeover-switch": "transfer-switch",
    "inverter": "inverter-charger",
    "separate-sockets": "charger-only",
    "nothing": "joined",
}


def mains_feeds(van: Van, part: Part | None) -> Came | None:
    """What shore power reaches; without an inverter there is nothing to keep it from."""
    if van.stated("inverter") is State.NONE:
        return Came("charger-only", "inverter")
    found = key_of_kind(van, "mains", "changeover")
    if found is None:
        mains = van.one("mains")
        return Came("joined", f"{mains.place}.changeover") if mains else None
    mains = van.one("mains")
    chosen = mains.choice("changeover") if mains else None
    return Came(FEEDS[chosen] if chosen else "", found.place)


def switched_power(van: Van, part: Part | None) -> Came | None:
    """The power of what is switched."""
    return load_power(van, part)


def _on_mains(part: Part) -> bool | None:
    """Return whether a load is fed with mains voltage, None where that is not known."""
    name, mains = ("route", INVERTER) if "route" in part.values else ("way", "shore")
    found = part.choice(name)
    return None if found is None else found == mains


def switched_supply(van: Van, part: Part | None) -> Came | None:
    """Whether a switch breaks direct current or mains."""
    if part is None:
        return None
    mains = _on_mains(part)
    name = "route" if "route" in part.values else "way"
    return Came("" if mains is None else "AC" if mains else "DC", f"{part.place}.{name}")


def switched_voltage(van: Van, part: Part | None) -> Came | None:
    """The voltage of the line that is switched."""
    if part is None or _on_mains(part) is None:
        return None
    if _on_mains(part):
        return key_of_kind(van, "mains", "supply_voltage")
    return key_of_kind(van, "van", "system")


def switched_load(van: Van, part: Part | None) -> Came | None:
    """What kind of load is switched."""
    if part is None:
        return None
    if "load" not in part.values:
        return Came("heater", part.place)
    load = part.choice("load")
    kind = {"light": "lamp", **dict.fromkeys(MOTORS, "motor"), **dict.fromkeys(RESISTIVE, "heater")}
    return Came(kind[load], f"{part.place}.load") if load in kind else None


def switched_distance(van: Van, part: Part | None) -> Came | None:
    """How far the load is."""
    return key_of(part, "length") if part is not None else None


def water_voltage(van: Van, part: Part | None) -> Came | None:
    """The voltage of the element: the bank's, or the shore's."""
    way = part.choice("way") if part else None
    if way == "bank":
        return bank_voltage(van, part)
    return key_of_kind(van, "mains", "supply_voltage") if way == "shore" else None


def lamp_return(van: Van, part: Part | None) -> Came | None:
    """Which way the minus of the lamps goes."""
    if part is None:
        return None
    by, place = part.choice("return_by"), f"{part.place}.return_by"
    return unknown(place) if by is None else Came(RETURNS[by], place)


COLUMNS = ("name", "stud", "maker_torque", "grade", "condition", "lugs", "joint")


def joints(van: Van, part: Part | None) -> Came:
    """All joints of which the stud is known, as one list."""
    found = [one for one in van.all("joints") if one["stud"].known]
    rows = [[one.name, *(one.text(name) for name in COLUMNS[1:])] for one in found]
    return Came(joined(rows), "joints")


def heat_loss(van: Van, part: Part | None) -> Came:
    """The heat to hold: what the worksheet of the living space says in this pattern."""
    from calc.van.bind import filled

    found = filled(van, "heat-loss", pattern_of(van, part))
    place = next(iter(found.lacking), "")
    if place:
        return unknown(found.missing[place])
    answer = attempted("heat-loss", found.texts)
    return watts(answer.values["loss"], "shell") if answer else unknown("shell")


def cooling_basis(van: Van, part: Part | None) -> Came | None:
    """By the heat that comes in, where somebody said how hot it gets; else by the time it runs."""
    from calc.van.from_sources import day_outside

    hot = day_outside(van, part)
    return Came("heat load", hot.place) if hot is not None and hot.text else None


def cooling_duty(van: Van, part: Part | None) -> Came | None:
    """The share of the time that it runs, where that does not follow from the heat."""
    return None if cooling_basis(van, part) else key_of_kind(van, "cooler", "duty")


def shell_rate(van: Van, part: Part | None) -> Came:
    """What shell and air pass for each kelvin, by the worksheet of the living space."""
    from calc.van.bind import filled

    found = filled(van, "heat-loss", pattern_of(van, part))
    place = next((one for one in found.lacking if one not in _OF_THE_NIGHT), "")
    if place:
        return unknown(found.missing[place])
    answer = attempted("heat-loss", found.texts)
    if answer is None:
        return unknown("shell")
    passed = answer.values["conduction"] + answer.values["infiltration"]
    kelvins = answer.values["inside"] - answer.values["outside"]
    return Came(f"{passed / kelvins:.6g} W/K", "shell")
