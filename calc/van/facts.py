"""Facts of a van that the rules of the whole are asked of, each taken from its record."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from calc.units.si import Amperes, Ohms, Volts
from calc.van.judging import Fact, absent, known, there, told
from calc.van.record import Part, Van

# A supply of each region: voltage, and what its usual lead and inlet carry. Common practice.
SUPPLIES = {
    "230-V": {"supply_voltage": "230 V", "supply_limit": "16 A", "breaker": "16 A"},
    "120-V": {"supply_voltage": "120 V", "supply_limit": "15 A", "breaker": "15 A"},
    "100-V": {"supply_voltage": "100 V", "supply_limit": "15 A", "breaker": "15 A"},
}
FUELS = frozenset({"diesel", "petrol", "propane"})
_MONTH = re.compile(r"(\d{4})-(\d{2})")


def bar(van: Van, pole: str) -> str:
    """Return the id of the first bus bar or fuse block of a pole, or nothing."""
    return next((one.id for one in van.all("bars") if known(one, "pole") == pole), "")


def system_volts(van: Van) -> float | None:
    """Return the nominal voltage [V] of a van, None where it is not known."""
    named = known(van.one("van"), "system")
    return float(named.split()[0]) if named and named != "none" else None


@dataclass(frozen=True, kw_only=True)
class Mains(Fact):
    """The mains of a van. `stated` tells whether the record has such a part at all.

    `supply` and `charger_texts` are what a mend writes: those of the van's region, and those of a
    charger where there is none; `vents` are twice those of the bay, for the charger's heat.
    """

    stated: bool
    inlet: str | None
    inverter: bool
    breaker: str | None  # "none", or "there"
    breaker_current: Amperes | None
    supply_limit: Amperes | None
    supply_text: str
    switching: str | None
    residual: str | None
    residual_type: str | None
    polarity: str | None
    charger: bool
    earth: str | None
    changeover: str | None
    earth_resistance: Ohms | None
    insulation_resistance: Ohms | None
    supply: Mapping[str, str] = field(default_factory=dict)
    charger_texts: Mapping[str, str] = field(default_factory=dict)
    vents: str = ""

    @property
    def plugged(self) -> bool:
        """Whether there is an inlet, as far as is known."""
        return self.inlet == "yes"


def mains(van: Van) -> Iterator[Mains]:
    """Yield the mains of a van: one fact, also where it has none."""
    part = van.one("mains")
    region = known(van.one("van"), "mains_region") or "230-V"
    fitted = there(part, "breaker")
    inlet = known(part, "inlet")
    if part is None:
        inlet = "no" if absent(van, "mains") else None
    own = {key: told(part, key) for key in ("supply_voltage", "supply_limit", "breaker")}
    yield Mains(
        at="mains",
        part="mains",
        stated=part is not None,
        inlet=inlet,
        inverter=van.one("inverter") is not None,
        breaker=None if fitted is None else "there" if fitted else "none",
        breaker_current=part.si("breaker") if part else None,
        supply_limit=part.si("supply_limit") if part else None,
        supply_text=own["supply_limit"],
        switching=known(part, "switching"),
        residual=known(part, "residual"),
        residual_type=known(part, "residual_type"),
        polarity=known(part, "polarity"),
        charger=van.one("shore") is not None,
        earth=known(part, "earth"),
        changeover=known(part, "changeover"),
        earth_resistance=part.si("earth_resistance") if part else None,
        insulation_resistance=part.si("insulation_resistance") if part else None,
        supply=SUPPLIES[region] | {key: text for key, text in own.items() if text},
        charger_texts=_charger_texts(van) if absent(van, "shore") else {},
        vents=_twice_the_vents(van),
    )


def _twice_the_vents(van: Van) -> str:
    bay = van.one("bay")
    vents = bay.si("vents") if bay else None
    return f"{2 * vents * 1e4:.0f} cm²" if vents else ""


def _charger_texts(van: Van) -> dict[str, str]:
    found = {
        "length": "1 m",
        "power_factor": "0.98",
        "from": bar(van, "plus"),
        "return_to": bar(van, "minus"),
    }
    return {key: text for key, text in found.items() if text}


@dataclass(frozen=True, kw_only=True)
class Bond(Fact):
    """An inverter beside the mains: its neutral's bond, and what guards its outlets."""

    neutral_bond: str | None
    outlets_residual: str | None
    inlet: str | None
    changeover: str | None


def bonds(van: Van) -> Iterator[Bond]:
    """Yield the inverter's bond, if there is an inverter."""
    for part in van.all("inverter"):
        own = van.one("mains")
        yield Bond(
            at=part.place,
            part=part.name,
            neutral_bond=known(part, "neutral_bond"),
            outlets_residual=known(part, "residual"),
            inlet=known(own, "inlet"),
            changeover=known(own, "changeover"),
        )


@dataclass(frozen=True, kw_only=True)
class Alarms(Fact):
    """The alarms of a van, and what aboard calls for them.

    `kinds` are the kinds of alarm that are there; `unknown` tells that there may be others.
    `undated` tells that an alarm has an expiry, and the record no date to hold it to.
    """

    kinds: frozenset[str]
    unknown: bool
    flame: bool
    gas: bool
    undated: bool

    def lacks(self, kind: str) -> bool:
        """Whether there is surely no alarm of a kind."""
        return kind not in self.kinds and not self.unknown


def burns(van: Van) -> bool:
    """Return whether anything aboard burns fuel, as far as is known."""
    heater, water = van.one("heater"), van.one("water_heater")
    return bool(
        known(heater, "fuel") in FUELS
        or (known(water, "way") == "fuel" or known(water, "fuel") in FUELS)
        or van.one("gas")
    )


def gas_aboard(van: Van) -> bool:
    """Return whether gas is aboard, as far as is known."""
    fuels = (known(van.one("heater"), "fuel"), known(van.one("water_heater"), "fuel"))
    return "propane" in fuels or van.one("gas") is not None


def alarms(van: Van) -> Iterator[Alarms]:
    """Yield the alarms of a van as one fact."""
    kinds = [known(one, "kind") for one in van.all("alarms")]
    yield Alarms(
        at="van",
        part="alarms",
        kinds=frozenset(one for one in kinds if one),
        unknown=None in kinds or not (kinds or absent(van, "alarms")),
        flame=burns(van),
        gas=gas_aboard(van),
        undated=not _today(van) and any(_month(told(one, "expiry")) for one in van.all("alarms")),
    )


@dataclass(frozen=True, kw_only=True)
class Alarm(Fact):
    """One alarm. `expired` tells whether its date had passed when it was looked at."""

    kind: str | None
    tested: str | None
    supply: str | None
    expired: bool | None
    expiry: str
    flame: bool
    gas: bool

    @property
    def of_gas(self) -> bool:
        """Whether it is the gas alarm of a van that has gas."""
        return self.kind == "gas" and self.gas

    @property
    def vital(self) -> bool:
        """Whether it is the carbon monoxide alarm of a van in which something burns."""
        return self.kind == "co" and self.flame


def each_alarm(van: Van) -> Iterator[Alarm]:
    """Yield each alarm of a van."""
    today = _today(van)
    for part in van.all("alarms"):
        until = _month(told(part, "expiry"))
        yield Alarm(
            at=part.place,
            part=f"{(known(part, 'kind') or 'alarm').replace('co', 'carbon monoxide')} alarm",
            kind=known(part, "kind"),
            tested=known(part, "tested"),
            supply=known(part, "supply"),
            expired=None if not until or not today else until < today,
            expiry=told(part, "expiry"),
            flame=burns(van),
            gas=gas_aboard(van),
        )


def _today(van: Van) -> tuple[str, ...]:
    return _month(told(van.one("van"), "date") or last_seen(van))


def last_seen(van: Van) -> str:
    """Return the latest date at which anything of a van was stated, nothing where none is."""
    dates = (
        stated.when
        for part in van.everything()
        for value in part.values.values()
        for stated in value.statements
        if _MONTH.match(stated.when)
    )
    return max(dates, default="")


def _month(text: str) -> tuple[str, ...]:
    found = _MONTH.match(text.strip())
    return found.groups() if found else ()


@dataclass(frozen=True, kw_only=True)
class Gas(Fact):
    """A gas installation."""

    locker: str | None
    sparks: str | None
    flueless: str | None


def gas(van: Van) -> Iterator[Gas]:
    """Yield the gas installation, if there is one."""
    for part in van.all("gas"):
        keys = ("locker", "sparks", "flueless")
        yield Gas(at=part.place, part="gas", **{key: known(part, key) for key in keys})


@dataclass(frozen=True, kw_only=True)
class Joint(Fact):
    """A joint: what keeps it locked, and how it stood a tug."""

    lock: str | None
    tug: str | None


def joints(van: Van) -> Iterator[Joint]:
    """Yield each joint."""
    for part in van.all("joints"):
        yield Joint(at=part.place, part=part.name, lock=known(part, "lock"), tug=known(part, "tug"))


@dataclass(frozen=True, kw_only=True)
class Bar(Fact):
    """A bus bar or fuse block. `fed` is the largest fuse that feeds it."""

    pole: str | None
    rating: Amperes | None
    cover: str | None
    lugs: float | None
    fed: Amperes | None


def bars(van: Van) -> Iterator[Bar]:
    """Yield each bus bar and fuse block."""
    for part in van.all("bars"):
        feeding = [
            fuse for one in van.all("cables")
            if target(one, "to") == part.id and (fuse := one.si("fuse")) is not None
        ]  # fmt: skip
        yield Bar(
            at=part.place,
            part=part.name,
            pole=known(part, "pole"),
            rating=part.si("rating"),
            cover=known(part, "cover"),
            lugs=part.si("lugs_on_stud"),
            fed=max(feeding, default=None),
        )


def target(part: Part, key: str) -> str:
    """Return the id of the part that a reference names, without the terminal after its point."""
    return (known(part, key) or "").split(".")[0]


@dataclass(frozen=True, kw_only=True)
class Regulator(Fact):
    """A solar regulator: whether panels may come first, and whether they can be parted from it."""

    panels_first: str | None
    isolated: str | None
    panels_at: str


def regulators(van: Van) -> Iterator[Regulator]:
    """Yield each regulator with each of its strings of panels."""
    for part in van.all("regulators"):
        for panels in van.all("panels"):
            if target(panels, "regulator") in (part.id, ""):
                yield Regulator(
                    at=part.place,
                    part=part.name,
                    panels_first=known(part, "panels_first"),
                    isolated=known(panels, "isolator"),
                    panels_at=panels.place,
                )


@dataclass(frozen=True, kw_only=True)
class Counting(Fact):
    """What counts the charge: the monitor and its shunt, and what goes past it."""

    monitor: str | None
    shunt: bool | None
    bypassed_by: str
    main_minus: str
    shunt_at: str
    monitor_at: str
    shunt_texts: Mapping[str, str] = field(default_factory=dict)


def counting(van: Van) -> Iterator[Counting]:
    """Yield what counts the charge, also where nothing does."""
    monitor, shunt = van.one("monitor"), van.one("shunt")
    own = known(monitor, "monitor")
    if monitor is None:
        own = "no-monitor" if absent(van, "monitor") else None
    minus = next((one.id for one in van.all("cables") if known(one, "pole") == "minus"), "")
    yield Counting(
        at="monitor",
        part="monitor",
        monitor=own,
        shunt=True if shunt else False if absent(van, "shunt") else None,
        bypassed_by=told(shunt, "bypassed_by") if there(shunt, "bypassed_by") else "",
        main_minus=minus,
        shunt_at="shunt" if shunt else "",
        monitor_at="monitor" if monitor else "",
        shunt_texts={"rating": "500 A", "bypassed_by": "none"}
        | ({"in_line": minus} if minus else {}),
    )


@dataclass(frozen=True, kw_only=True)
class Converter(Fact):
    """A converter: what it can give, and what its circuits draw of it."""

    rated_current: Amperes | None
    largest: Amperes
    together: Amperes


def converters(van: Van) -> Iterator[Converter]:
    """Yield each converter with the circuits that it feeds."""
    for part in van.all("converters"):
        drawn = [
            current for one in van.all("circuits")
            if target(one, "from") == part.id
            and (current := current_of(van, one, part.si("output_voltage"))) is not None
        ]  # fmt: skip
        yield Converter(
            at=part.place,
            part=part.name,
            rated_current=part.si("rated_current"),
            largest=max(drawn, default=0.0),
            together=sum(drawn),
        )


def current_of(van: Van, part: Part, volts: Volts | None = None) -> Amperes | None:
    """Return the current [A] of a circuit: as given, or by its power at `volts`, else nominal."""
    own, power, volts = part.si("current"), part.si("power"), volts or system_volts(van)
    if own is not None:
        return own
    return power / volts if power is not None and volts else None
