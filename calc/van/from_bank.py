"""What a bank says for worksheets: its batteries together, and its voltages by chemistry."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable

import calc
from calc.energy import voltages
from calc.energy.battery import Chemistry
from calc.van.came import Came, agreed, amp_hours, amps, key_of_kind, unknown, volts
from calc.van.once import once_for_each_van
from calc.van.record import Part, Van
from calc.van.values import State

BLOCKS = {"12 V": 1, "24 V": 2, "48 V": 4}  # batteries of 12 V in series, by name
RELAY = "relay"


@once_for_each_van
def house(van: Van) -> tuple[Part, ...]:
    """Return the batteries of the house bank."""
    return tuple(one for one in van.all("batteries") if one.choice("role") != "starter")


def blocks(van: Van) -> int | None:
    """Return how many blocks of 12 V the system has in series, None where it is not known."""
    return BLOCKS.get(van.parts["van"][0].choice("system") or "")


def chemistries(van: Van) -> tuple[Chemistry, ...] | Came:
    """Return the chemistry of each battery, or the place at which one is not known."""
    found = []
    for one in house(van):
        name = one.choice("chemistry")
        if name is None:
            return unknown(f"{one.place}.chemistry")
        found.append(Chemistry(name))
    return tuple(found) or unknown("batteries")


def _voltage(
    van: Van,
    of_block: Callable[[Chemistry], float],
    pick: Callable[[Iterable[float]], float] = max,
) -> Came:
    """Return the voltage of a block by its chemistry, for as many blocks as the system has."""
    kept, key = _voltages(van), (of_block, pick)
    if key not in kept:
        kept[key] = _worked_voltage(van, of_block, pick)
    return kept[key]


@once_for_each_van
def _voltages(van: Van) -> dict[Hashable, Came]:
    return {}


def _worked_voltage(
    van: Van, of_block: Callable[[Chemistry], float], pick: Callable[[Iterable[float]], float]
) -> Came:
    found, count = chemistries(van), blocks(van)
    if isinstance(found, Came):
        return found
    if count is None:
        return unknown("van.system")
    return volts(count * pick(map(of_block, found)), "van.system")


def bank_chemistry(van: Van, part: Part | None) -> Came:
    """The chemistry, where all batteries are of one."""
    return agreed(house(van), "chemistry") or unknown("batteries")


def bank_capacity(van: Van, part: Part | None) -> Came:
    """The capacity of all batteries in parallel."""
    found = house(van)
    total = 0.0
    for one in found:
        for name in ("capacity", "units"):
            if one.si(name) is None:
                return unknown(f"{one.place}.{name}")
        total += (one.si("capacity") or 0.0) * (one.si("units") or 0.0)
    if not found:
        return unknown("batteries")
    first = found[0]
    if len(found) == 1 and first.si("units") == 1:
        return Came(first.text("capacity"), f"{first.place}.capacity", total)
    return amp_hours(total, f"{first.place}.capacity")


def bank_voltage(van: Van, part: Part | None) -> Came:
    """The mean voltage under load, by chemistry and system."""
    return _voltage(van, voltages.under_load, min)


def highest_voltage(van: Van, part: Part | None) -> Came:
    """The highest voltage while the bank charges: by chemistry, or the engine's through a relay."""
    found = _voltage(van, voltages.max_charge_voltage)
    alternator = van.one("alternator")
    if found.si is None or alternator is None or alternator.choice("method") != RELAY:
        return found
    engine = alternator.si("engine_voltage")
    if engine is None:
        return unknown(f"{alternator.place}.engine_voltage")
    return volts(engine, f"{alternator.place}.engine_voltage") if engine > found.si else found


def rest_voltage(van: Van, part: Part | None) -> Came:
    """The voltage at rest and full."""
    return _voltage(van, voltages.full_at_rest)


def charging_voltage(van: Van, part: Part | None) -> Came:
    """The voltage at which a charge ends."""
    return _voltage(van, voltages.charge_end)


def bank_cells(van: Van, part: Part | None) -> Came:
    """The cells in series."""
    found = _voltage(van, voltages.cells)
    return Came(found.text.removesuffix(" V"), found.place)


def unit_capacity(van: Van, part: Part | None) -> Came:
    """The capacity of one battery, where all are alike."""
    return agreed(house(van), "capacity") or unknown("batteries")


def unit_current(van: Van, part: Part | None) -> Came | None:
    """What one battery may give, where all are alike."""
    return agreed(house(van), "unit_current")


def bank_limit(van: Van, part: Part | None) -> Came | None:
    """The most that the bank may give: by its management system, or by its batteries together."""
    limits = [one for one in (_system_limit(van), _batteries_limit(van)) if one is not None]
    known = [one for one in limits if one.si is not None]
    return min(known, key=lambda one: one.si or 0.0) if known else next(iter(limits), None)


def _system_limit(van: Van) -> Came | None:
    return key_of_kind(van, "management", "discharge_limit")


def _batteries_limit(van: Van) -> Came | None:
    total, found = 0.0, house(van)
    for one in found:
        current, units = one.si("unit_current"), one.si("units")
        if current is None or units is None:
            return None
        total += current * units
    return amps(total, f"{found[0].place}.unit_current") if found else None


def management(van: Van, part: Part | None) -> Came | None:
    """Whether there is a management system."""
    if van.stated("management") is State.NONE:
        return Came("not fitted", "management")
    return key_of_kind(van, "management", "fitted")


def lowest_voltage(van: Van, part: Part | None) -> Came | None:
    """The lowest voltage at which the inverter still works.

    A plan that leaves it open takes what the worksheet of inverters takes at 12 V, for each block.
    """
    own = key_of_kind(van, "inverter", "lowest_voltage")
    inverter, count = van.one("inverter"), blocks(van)
    if own is None or own.text or inverter is None or count is None:
        return own
    if van.inspection or inverter["lowest_voltage"].state is not State.BLANK:
        return own
    usual = calc.find("inverter-size").read({})[0]["lowest_voltage"].value
    assert isinstance(usual, float)
    return volts(count * usual, own.place)
