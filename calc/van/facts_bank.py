"""Facts of a van's bank: its batteries, what charges it and by how much, and how it is cut off."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated

from calc.energy.battery import Chemistry
from calc.energy.charging import by_chemistry
from calc.energy.limits import FREEZING
from calc.units.constants import HOUR
from calc.units.si import Amperes, Celsius, Number, Tag, Volts
from calc.van.bind import filled
from calc.van.currents import load_current
from calc.van.facts import system_volts, target
from calc.van.from_bank import highest_voltage
from calc.van.judging import Fact, absent, known, there
from calc.van.paths import device_before
from calc.van.record import Part, Van
from calc.van.values import State
from calc.van.worked import attempted

# From here on parts are marked by their limit, not by the system: common practice, no source
BY_LIMIT: Annotated[Volts, Tag("system from which parts are marked by their limit")] = 48.0


@dataclass(frozen=True, kw_only=True)
class House(Fact):
    """The house bank. None of `main_fuse`, `isolator` means that it is not known.

    `sun`, `alternator` and `shore` are the largest currents of its sources; `together` those that
    can meet, for a van on shore power does not drive. `usual_most` is what such a bank is usually
    charged with at most. `outputs` are the places that set
    them, `main_line` the id of its main plus cable.
    """

    chemistries: frozenset[str]
    capacities: frozenset[float]
    batteries: float
    first_battery: str
    other_batteries: tuple[str, ...]
    take_off: str | None
    matched: str | None
    main_fuse: bool | None
    isolator: bool | None
    coldest: Celsius | None
    cold_cut_off: str | None
    sun: Amperes
    alternator: Amperes
    shore: Amperes
    charge_limit: Amperes | None
    usual_most: Amperes | None
    stop_signal: str | None
    management: str | None
    outputs: tuple[tuple[str, Amperes], ...]
    main_line: str

    @property
    def together(self) -> Amperes:
        """The current of the sources that can charge at one time."""
        return self.sun + max(self.alternator, self.shore)

    @property
    def strongest(self) -> Amperes:
        """The current of the strongest source alone."""
        return max(self.sun, self.alternator, self.shore)

    @property
    def lithium(self) -> bool:
        """Whether it is LFP throughout."""
        return self.chemistries == {"LFP"}

    @property
    def charged(self) -> bool:
        """Whether anything charges it."""
        return self.strongest > 0

    @property
    def freezes(self) -> bool:
        """Whether it gets colder than it may be charged at."""
        return self.coldest is not None and self.coldest < FREEZING


def house_batteries(van: Van) -> tuple[Part, ...]:
    """Return the batteries of the house bank."""
    return tuple(one for one in van.all("batteries") if known(one, "role") != "starter")


def houses(van: Van) -> Iterator[House]:
    """Yield the house bank, if the record has a battery of it."""
    own = house_batteries(van)
    if not own:
        return
    management, bank = van.one("management"), van.one("bank")
    units = sum(one.si("units") or 1 for one in own)  # those side by side
    yield House(
        at="bank",
        part="bank",
        chemistries=frozenset(name for one in own if (name := known(one, "chemistry"))),
        capacities=frozenset(size for one in own if (size := one.si("capacity"))),
        batteries=units,
        first_battery=own[0].place,
        other_batteries=tuple(one.place for one in own[1:]),
        take_off=known(bank, "take_off"),
        matched=known(bank, "matched"),
        main_fuse=_main_fuse(van, own),
        isolator=_isolator(van),
        coldest=bank.si("coldest") if bank else None,
        cold_cut_off=known(management, "cold_cut_off"),
        sun=sun_current(van),
        alternator=alternator_current(van),
        shore=_largest(van, "shore", "charger"),
        charge_limit=management.si("charge_limit") if management else None,
        usual_most=_usual_most(own),
        stop_signal=known(management, "stop_signal"),
        management="not-fitted" if absent(van, "management") else known(management, "fitted"),
        outputs=outputs(van),
        main_line=_main_line(van, own),
    )


def _main_line(van: Van, own: tuple[Part, ...]) -> str:
    """Return the id of the plus cable that leaves the bank, nothing without one."""
    ids = {one.id for one in own} | {"bank"}
    plus = (one for one in van.all("cables") if known(one, "pole") != "minus")
    return next((one.id for one in plus if target(one, "from") in ids), "")


def _main_fuse(van: Van, own: tuple[Part, ...]) -> bool | None:
    """Return whether every way out of the bank's plus has a fuse."""
    each = [there(one, "fuse") for one in own]
    if all(each):
        return True
    ids = {one.id for one in own} | {"bank"}
    out = [
        there(one, "fuse")
        for kind in ("cables", "circuits", "inverter")
        for one in van.all(kind)
        if target(one, "from") in ids
        and ("pole" not in one.values or known(one, "pole") != "minus")
    ]
    if out and all(out):
        return True
    if None in each or None in out:
        return None
    if not out and not van.inspection:
        return None if any(each) else False
    return False


def _isolator(van: Van) -> bool | None:
    if van.all("isolators"):
        return True
    return False if absent(van, "isolators") else None


def _largest(van: Van, kind: str, key: str) -> Amperes:
    part = van.one(kind)
    return (part.si(key) if part else None) or 0.0


def _usual_most(own: tuple[Part, ...]) -> Amperes | None:
    """Return the most current [A] that such a bank is usually charged with, None if not known."""
    kinds = {known(one, "chemistry") for one in own}
    sizes = [(one.si("capacity"), one.si("units")) for one in own]
    name = kinds.pop() if len(kinds) == 1 else None
    if name is None or not all(size and units for size, units in sizes):
        return None
    total = sum((size or 0.0) * (units or 0.0) for size, units in sizes)
    return by_chemistry(Chemistry(name)).most * total


def outputs(van: Van) -> tuple[tuple[str, Amperes], ...]:
    """Return the largest current [A] of each source, with the place that sets it."""
    own = van.all("regulators")
    found = [(f"{one.place}.current_limit", one.si("current_limit")) for one in own]
    if alternator_current(van):
        found.append(("alternator.charger_limit", alternator_current(van)))
    if charger := _largest(van, "shore", "charger"):
        found.append(("shore.charger", charger))
    return tuple((place, current) for place, current in found if current)


def sun_current(van: Van) -> Amperes:
    """Return the largest charging current [A] of all panels through their regulators."""
    volts = system_volts(van)
    total = 0.0
    for regulator in van.all("regulators"):
        fed = [one for one in van.all("panels") if target(one, "regulator") in (regulator.id, "")]
        watts = sum(
            (one.si("power") or 0) * (one.si("series") or 1) * (one.si("strings") or 1)
            for one in fed
        )
        limit = regulator.si("current_limit")
        gives = watts / volts if volts else None
        total += (
            min(one for one in (limit, gives, 1e9) if one is not None) if limit or gives else 0.0
        )
    return total


def alternator_current(van: Van) -> Amperes:
    """Return the charging current [A] of a charger on the engine; a relay's is not limited."""
    part = van.one("alternator")
    if part is None or known(part, "method") != "charger":
        return 0.0
    return part.si("charger_limit") or 0.0


def charging_rate(van: Van) -> Number | None:
    """Return the current of the strongest source over the bank's capacity [1/h].

    None where a source or the capacity is not known, or a relay limits nothing.
    """
    own, alternator, shore = house_batteries(van), van.one("alternator"), van.one("shore")
    total = sum((one.si("capacity") or 0.0) * (one.si("units") or 0.0) for one in own)
    stated = [one.si("current_limit") for one in van.all("regulators")]
    if alternator is not None:
        by_charger = known(alternator, "method") == "charger"
        stated.append(alternator.si("charger_limit") if by_charger else None)
    if shore is not None:
        stated.append(shore.si("charger"))
    sources = ("panels", "regulators", "alternator", "shore")
    unseen = any(van.stated(kind) is State.NOT_SEEN for kind in sources)
    if unseen or None in stated or not total:
        return None
    if any(one.si("capacity") is None or one.si("units") is None for one in own):
        return None
    most = max(sun_current(van), alternator_current(van), _largest(van, "shore", "charger"))
    return most * HOUR / total


@dataclass(frozen=True, kw_only=True)
class Isolator(Fact):
    """An isolator or breaker, and the line that it opens.

    `highest` is the voltage that it must be marked for by the system's name, `charging` what the
    bank reaches where that name does not cover it. `opens_last` tells that it parts a running
    alternator from the battery that it always has, `may_open_last` that it parts the bank from one
    that charges it by a relay while no other battery is recorded.
    """

    kind: str | None
    rating: Amperes | None
    rated_voltage: Volts | None
    interrupting: Amperes | None
    reach: str | None
    line: Amperes | None
    line_fuse: Amperes | None
    highest: Volts | None
    charging: Volts | None
    opens_last: bool
    may_open_last: bool

    @property
    def needed(self) -> Volts:
        """The voltage that it must be made for."""
        return max(self.highest or 0.0, self.charging or 0.0)


def isolators(van: Van) -> Iterator[Isolator]:
    """Yield each isolator and breaker."""
    starters = {one.id for one in van.all("batteries") if known(one, "role") == "starter"}
    for part in van.all("isolators"):
        line = van.by_id(target(part, "in_line"))
        ends = (
            {target(line, "from"), target(line, "to")} if line and "from" in line.values else set()
        )
        yield Isolator(
            at=part.place,
            part=part.name,
            kind=known(part, "kind"),
            rating=part.si("rating"),
            rated_voltage=part.si("rated_voltage"),
            interrupting=part.si("interrupting"),
            reach=known(part, "reach"),
            line=line_current(van, line),
            line_fuse=line.si("fuse") if line and "fuse" in line.values else None,
            highest=_line_volts(van, line),
            charging=_charging(van, line),
            opens_last=bool(ends & starters) and van.one("alternator") is not None
            and (line is None or line.kind.id != "alternator"),
            may_open_last=not starters and known(van.one("alternator"), "method") == "relay"
            and bool(ends & {"bank", *(one.id for one in house_batteries(van))}),
        )  # fmt: skip


def _line_volts(van: Van, line: Part | None) -> Volts | None:
    """Return the voltage [V] that a line's isolator is marked for: the nominal one of the system.

    Of panels it is that of their string, open, on the coldest morning; by the labels alone where
    their worksheet cannot be worked.
    """
    if line is not None and line.kind.id == "panels":
        own = filled(van, "panel-string", line)
        answer = None if own.lacking else attempted("panel-string", own.texts)
        if answer is not None:
            return float(answer.values["cold_voc"])
        open_voltage, series = line.si("open_voltage"), line.si("series") or 1
        return None if open_voltage is None else open_voltage * series
    return system_volts(van)


def _charging(van: Van, line: Part | None) -> Volts | None:
    """Return the highest voltage [V] of a line of a 48 V bank: parts are marked for less or more.

    Those marked 12 V and 24 V are made for vehicles of that name, charging and all.
    """
    nominal = system_volts(van)
    own = line is not None and line.kind.id != "panels" and device_before(van, line) is None
    return highest_voltage(van, line).si if own and nominal == BY_LIMIT else None


def line_current(van: Van, line: Part | None) -> Amperes | None:
    """Return the current [A] of a line, as far as the record says one; a main cable's as stated."""
    if line is None or line.kind.id == "cables":
        return line.si("current") if line else None
    found = load_current(van, line)
    return found.si if found else None


@dataclass(frozen=True, kw_only=True)
class Charging(Fact):
    """Charging from the engine: by what."""

    method: str | None
    alternator: Amperes | None
    charger_texts: tuple[tuple[str, str], ...]


def charging(van: Van) -> Iterator[Charging]:
    """Yield the charging from the engine, if there is any."""
    for part in van.all("alternator"):
        rating = part.si("alternator")
        limit = 20.0 if rating is not None and rating < 100 else 30.0
        texts = {
            "method": "charger",
            "charger_limit": f"{limit:.0f} A",
            "stops_by": "run signal",
            "fused": "both ends",
        }
        yield Charging(
            at=part.place,
            part=part.name,
            method=known(part, "method"),
            alternator=rating,
            charger_texts=tuple((key, text) for key, text in texts.items()),
        )
