"""What a run of a van says for worksheets: its voltage, its feed, its source and its upstream fuse.

A run behind a main fuse is worked as a run whose source is all that lies before it.
"""

from __future__ import annotations

from calc.electrical.conductors import Series, conductor
from calc.energy.voltages import max_charge_voltage, under_load
from calc.van.bank_source import ESTIMATE, MAKER, bank_source, block_voltage, other_battery
from calc.van.came import Came, amps, key_of, key_of_kind, metres, milliohms, unknown, volts
from calc.van.currents import load_current
from calc.van.from_bank import bank_capacity, bank_voltage, house, rest_voltage
from calc.van.from_bank import highest_voltage as highest_of_bank
from calc.van.paths import device_before, runs, way
from calc.van.record import Part, Van
from calc.van.supply import Supply, own_share, supply
from calc.van.values import State

AT_BATTERY, KNOWN = "at-the-battery", "where-its-short-is-known"


def converter_before(van: Van, part: Part | None) -> Part | None:
    """Return the converter that feeds a run, None where the bank does."""
    device = device_before(van, part) if part is not None else None
    return device if device is not None and device.kind.id == "converters" else None


def used_voltage(van: Van, part: Part | None) -> Came | None:
    """The voltage that a load takes its power at: the bank's, or a converter's behind one."""
    device = converter_before(van, part)
    return bank_voltage(van, part) if device is None else key_of(device, "output_voltage")


def highest_voltage(van: Van, part: Part | None) -> Came | None:
    """The highest voltage that a fuse must open at: the bank's, or a converter's behind one."""
    device, other = converter_before(van, part), other_battery(van, part)
    if other is not None:
        return block_voltage(other, max_charge_voltage)
    return highest_of_bank(van, part) if device is None else key_of(device, "output_voltage")


def run_voltage(van: Van, part: Part | None) -> Came | None:
    """The voltage of a run: the system's, a converter's behind one, a string's of panels."""
    if part is None:
        return None
    if part.kind.id == "panels":
        voltage, series = part.si("max_power_voltage"), part.si("series")
        place = f"{part.place}.max_power_voltage"
        known = voltage is not None and series is not None
        return volts((voltage or 0.0) * (series or 0.0), place) if known else unknown(place)
    device, other = converter_before(van, part), other_battery(van, part)
    if other is not None:
        return block_voltage(other, under_load)
    return key_of_kind(van, "van", "system") if device is None else key_of(device, "output_voltage")


def loop_length(van: Van, part: Part | None) -> Came | None:
    """The length of a run as worksheets take it: a cable of one pole is half of a loop."""
    came = key_of(part, "length") if part is not None else None
    length = part.si("length") if part is not None else None
    if came is None or length is None or part is None or own_share(part) == 1:
        return came
    return metres(own_share(part) * length, came.place)


def fed_load(van: Van, part: Part | None) -> Came | None:
    """The current of all circuits behind a converter, at its output; None where there are none."""
    if part is None:
        return None
    fed = [one for one in van.all("circuits") if device_before(van, one) == part]
    total = 0.0
    for one in fed:
        current, power, output = one.si("current"), one.si("power"), part.si("output_voltage")
        if current is None and (power is None or not output):
            return unknown(f"{one.place}.current")
        total += current if current is not None else (power or 0.0) / (output or 1.0)
    return amps(total, f"{fed[0].place}.current") if fed and total else None


def allowed_fuse(van: Van, part: Part | None) -> Came | None:
    """The largest fuse by the appliance's label; only a circuit has one."""
    return key_of(part, "allowed") if part is not None else None


def sizes_in_use(van: Van, part: Part | None) -> Came | None:
    """The series of sizes of the first conductor that is stated in the van."""
    for one in runs(van):
        if (name := one.choice("conductor")) is not None:
            metric = conductor(name).series is Series.METRIC
            return Came("mm2" if metric else "AWG", f"{one.place}.conductor")
    return None


def fuse_place(van: Van, part: Part | None) -> Came | None:
    """Whether the fuse of a run is at its source, or further on, where its short is worked."""
    if part is None:
        return None
    place = f"{part.place}.from"
    if converter_before(van, part) is not None:
        return Came(AT_BATTERY, place)
    there = way(van, part)
    if there is None:
        return unknown(place)
    behind = there.runs and other_battery(van, part) is None
    return Came(KNOWN if behind else AT_BATTERY, place)


def bank_fault(van: Van, part: Part | None) -> Came | None:
    """What a short can drive through the fuse of a run at most, as the schedule works it.

    A converter limits its current: behind one it is what that gives for hours.
    """
    if (device := converter_before(van, part)) is not None:
        return key_of(device, "rated_current")
    before = supply(van, part) if part is not None else bank_source(van)
    if isinstance(before, Came):
        return before
    bank = before.bank if isinstance(before, Supply) else before
    return amps(bank.voltage / before.least, bank.place)


def _source(van: Van, part: Part | None) -> Supply | Came | None:
    """Return what lies before a run, None where that is the bank alone or not of one run."""
    if part is None or part.kind.id == "batteries":
        return None
    found = supply(van, part)
    return None if isinstance(found, Supply) and found.alone else found


def source_voltage(van: Van, part: Part | None) -> Came:
    """The voltage of the source of a short, at rest and full."""
    found = _source(van, part)
    if isinstance(found, Supply) and found.battery is not None:
        return volts(found.bank.voltage, f"{found.battery.place}.chemistry")
    return rest_voltage(van, part)


def source_known(van: Van, part: Part | None) -> Came:
    """How the source of a short is known: by resistance, or estimated from a lead-acid bank."""
    before = _source(van, part)
    if isinstance(before, Came):
        return before
    if before is not None:
        return Came(MAKER, before.bank.place)
    bank = bank_source(van)
    if isinstance(bank, Came):
        return bank
    first = house(van)[0]
    return Came(MAKER if first["resistance"].known else ESTIMATE, bank.place)


def source_resistance(van: Van, part: Part | None) -> Came | None:
    """The resistance of the source of a short: of one battery, or of all before the run."""
    before = _source(van, part)
    if isinstance(before, Came):
        return before
    if before is not None:
        return milliohms(before.least, before.bank.place)
    found = house(van)
    if len(found) == 1:
        return key_of(found[0], "resistance") if found[0]["resistance"].known else None
    bank = bank_source(van)
    return bank if isinstance(bank, Came) else milliohms(bank.least, bank.place)


def _of_one_battery(van: Van, part: Part | None, name: str) -> Came | None:
    """Return a figure of the only kind of battery where the bank itself is the source."""
    found = house(van)
    return key_of(found[0], name) if len(found) == 1 and _source(van, part) is None else None


def source_strings(van: Van, part: Part | None) -> Came | None:
    """How many batteries side by side the source is."""
    return _of_one_battery(van, part, "units")


def source_series(van: Van, part: Part | None) -> Came | None:
    """How many batteries in series the source is."""
    return _of_one_battery(van, part, "series")


def source_capacity(van: Van, part: Part | None) -> Came | None:
    """The capacity of one battery, where the source is estimated from it."""
    found = house(van)
    if _source(van, part) is not None or not found:
        return None
    return key_of(found[0], "capacity") if len(found) == 1 else bank_capacity(van, part)


def each_fused(van: Van, part: Part | None) -> Came | None:
    """Whether each battery has its own fuse."""
    for one in house(van):
        if one["fuse"].state is State.NONE:
            return Came("no", f"{one.place}.fuse")
        if not one["fuse"].known:
            return unknown(f"{one.place}.fuse")
    found = house(van)
    return Came("yes", f"{found[0].place}.fuse") if found else unknown("batteries")


def joint_full_current(van: Van, part: Part | None) -> Came | None:
    """The full current of a joint: as stated, else that of what it belongs to."""
    if part is None:
        return None
    if part["full_current"].known:
        return key_of(part, "full_current")
    on = van.by_id(part.text("on").partition(".")[0])
    if on is None or "conductor" not in on.values:
        return unknown(f"{part.place}.full_current")
    return load_current(van, on)
