"""What a run of a van says for worksheets: its voltage, its feed, its source and its upstream fuse.

A run behind a main fuse is worked as a run whose source is all that lies before it.
"""

from __future__ import annotations

from calc.electrical.conductors import Series, conductor
from calc.van.came import Came, amps, key_of, key_of_kind, metres, milliohms, unknown, volts
from calc.van.chosen import conductor_of
from calc.van.currents import load_current
from calc.van.from_bank import bank_capacity, bank_voltage, house
from calc.van.from_bank import highest_voltage as highest_of_bank
from calc.van.paths import device_before, runs, way
from calc.van.record import Part, Van
from calc.van.supply import (
    ESTIMATE,
    MAKER,
    Supply,
    bank_source,
    runs_before,
    supply,
    weight,
)
from calc.van.values import State

AT_BATTERY, BEHIND_MAIN = "at-the-battery", "behind-a-main-fuse"


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
    device = converter_before(van, part)
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
    device = converter_before(van, part)
    return key_of_kind(van, "van", "system") if device is None else key_of(device, "output_voltage")


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
    """Whether the fuse of a run is at its source, battery or converter, or behind a main fuse."""
    if part is None:
        return None
    place = f"{part.place}.from"
    if converter_before(van, part) is not None:
        return Came(AT_BATTERY, place)
    there = way(van, part)
    if there is None:
        return unknown(place)
    return Came(BEHIND_MAIN if there.runs else AT_BATTERY, place)


def bank_fault(van: Van, part: Part | None) -> Came | None:
    """What the bank gives into a short at its posts, at most.

    A converter limits its current: behind one it is what that gives for hours.
    """
    if (device := converter_before(van, part)) is not None:
        return key_of(device, "rated_current")
    bank = bank_source(van)
    return bank if isinstance(bank, Came) else amps(bank.voltage / bank.least, bank.place)


def feed_conductor(van: Van, part: Part | None) -> Came | None:
    """The conductor of the run that feeds a run's fuse."""
    there = way(van, part) if part is not None else None
    if there is None or not there.runs:
        return None
    before = there.runs[0]
    found = conductor_of(van, before)
    return found if isinstance(found, Came) else Came(found.name, f"{before.place}.conductor")


def feed_length(van: Van, part: Part | None) -> Came | None:
    """How long the feed is, as if all of it were of the conductor nearest to the fuse.

    A thicker one further up counts by its area: so much of the other resists the same.
    """
    there = way(van, part) if part is not None else None
    if part is None or there is None or not there.runs:
        return None
    before = runs_before(van, part)
    if isinstance(before, Came):
        return before
    total, area = 0.0, None
    for run in before:
        laid = conductor_of(van, run)
        if isinstance(laid, Came):
            return laid
        length, parallel = run.si("length"), run.si("parallel")
        if length is None or parallel is None:
            return unknown(f"{run.place}.{'length' if length is None else 'parallel'}")
        own = conductor(laid.name).area
        area = own if area is None else area
        total += weight(van, part, run) * length * area / own / parallel
    return metres(total, f"{there.runs[0].place}.length")


def _source(van: Van, part: Part | None) -> Supply | Came | None:
    """Return what lies before a run, None where that is the bank alone or not of one run."""
    if part is None or part.kind.id == "batteries":
        return None
    found = supply(van, part)
    return None if isinstance(found, Supply) and not found.runs else found


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
