"""The tables of week-ahead, row by row, and its remedies in words."""

from dataclasses import dataclass, replace

from calc.energy.balance import HOURS
from calc.energy.forecast import WeekAhead, shore_offered
from calc.energy.outlook import HORIZON, Outlook
from calc.energy.remedies import Kind, Remedy
from calc.energy.week import DAYS, WeekInputs
from calc.units.constants import HOUR
from calc.units.kinds import CHARGE, POWER, TIME
from calc.units.shown import DOWN, UP, quantity_text

NEVER = "never"


@dataclass(frozen=True, kw_only=True)
class Brought:
    """What one source offered and brought over the week [J]."""

    name: str
    offered: float
    brought: float

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class Lost:
    """Energy lost over the week [J] to one cause."""

    name: str
    energy: float

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class OneDay:
    """One day of the week: its states [0..1], and energies [J] brought and taken by the loads."""

    name: str
    lowest: float
    highest: float
    end: float
    brought: float
    taken: float

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class Month:
    """One month: what the array offers in a day [J], when the bank is empty [s], and in words."""

    name: str
    sun: float
    empty: float | None
    outlook: str

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class Change:
    """One change in words, the share [0..1] that it asks, the lowest state with it, what follows."""

    name: str
    asks: str
    share: float
    lowest: float
    outlook: str
    works: bool

    @property
    def enough(self) -> str:
        """Whether it carries the week, in a word."""
        return "yes" if self.works else "no"

    def __str__(self) -> str:
        return f"{self.name}, {self.asks}"


def said(outlook: Outlook) -> str:
    """Return what comes of days all alike, in words."""
    if outlook.holds:
        return NEVER
    if outlook.empty == 0.0:
        return "at once"
    if outlook.empty is None:
        return f"after more than {HORIZON} days"
    return f"after {_time(outlook.empty)}"


def then(one: Change) -> str:
    """Return what follows a change that works, as the end of a sentence."""
    return "never empty" if one.outlook == NEVER else f"empty {one.outlook}"


def _time(seconds: float) -> str:
    unit = "day" if seconds >= 2 * HOURS * HOUR else "hour"
    return quantity_text(seconds, TIME, digits=2 if unit == "day" else 3, way=DOWN, unit=unit)


def change(inputs: WeekInputs, one: Remedy) -> Change:
    """Return a change of `inputs` in words.

    The lowest state is told as far as loads draw it down: below the floor goes only what the bank
    loses by itself.
    """
    name, asks = _words(inputs, one)
    if one.besides:
        other, _ = _words(inputs, replace(one, kind=one.besides))
        name = f"{other} and {name}"
    return Change(
        name=name,
        asks=asks,
        share=one.share,
        lowest=max(one.lowest, inputs.bank.floor),
        outlook=said(one.outlook),
        works=one.works,
    )


def _words(inputs: WeekInputs, one: Remedy) -> tuple[str, str]:
    """Return what is changed and to what, rounded to what is enough."""
    amount = one.amount or 0.0
    match one.kind:
        case Kind.DRIVE:
            hours = [
                quantity_text(time, TIME, way=UP, unit="hour")
                for time in (amount, inputs.drive_hours)
            ]
            return "more driving", _instead(f"{hours[0]} a day", inputs.drive_hours and hours[1])
        case Kind.SHORE:
            return "nights on a lead", "every night" if amount == 1 else f"every {amount:g} nights"
        case Kind.ARRAY:
            return "more array", _instead(
                quantity_text(amount, POWER, way=UP),
                inputs.array and quantity_text(inputs.array, POWER),
            )
        case Kind.BANK:
            return "more bank", _instead(
                quantity_text(amount, CHARGE, way=UP), quantity_text(inputs.capacity, CHARGE)
            )
        case Kind.OFF:
            return "inverter off while not used", "switched by hand"
        case Kind.ROUTE:
            return "the inverter’s loads on battery voltage", "with the same watts"
        case Kind.HALF:
            return one.load, "half as long"
    return one.load, "left out"


def _instead(new: str, old: str | float) -> str:
    return f"{new} instead of {old or 'none'}"


LOST = (
    "Inverter, conversion",
    "Inverter, idle",
    "Charging the bank",
    "Heavy current",
    "Bank by itself",
    "Sun not taken",
)
NONE = "None of the changes tried here carries it alone: put several together."
NO_CHARGE = (
    "At this temperature it takes no charge, so no source helps: bring it within its limits first."
)


def brought(found: WeekAhead) -> tuple[Brought, ...]:
    """Return what each source offered and brought."""
    flows, day = found.flows, found.day
    return (
        Brought(name="Sun", offered=DAYS * day.sun, brought=flows.sun),
        Brought(name="Driving", offered=DAYS * day.drive, brought=flows.drive),
        Brought(
            name="Lead from the shore", offered=shore_offered(found.inputs), brought=flows.shore
        ),
    )


def lost(found: WeekAhead) -> tuple[Lost, ...]:
    """Return what was lost to each cause."""
    flows = found.flows
    energies = (
        flows.conversion,
        flows.idle,
        flows.charging,
        flows.heavy,
        flows.alone,
        flows.not_taken,
    )
    return tuple(
        Lost(name=name, energy=energy) for name, energy in zip(LOST, energies, strict=True)
    )


def days(found: WeekAhead) -> tuple[OneDay, ...]:
    """Return the week day by day."""
    return tuple(
        OneDay(
            name=f"Day {one.number + 1}",
            lowest=one.lowest,
            highest=one.highest,
            end=one.end,
            brought=one.brought,
            taken=one.taken,
        )
        for one in found.days
    )


def months(found: WeekAhead) -> tuple[Month, ...] | None:
    """Return the same van in each month, None until that is worked out."""
    if found.months is None:
        return None
    return tuple(
        Month(name=str(one.month), sun=one.sun, empty=one.outlook.empty, outlook=said(one.outlook))
        for one in found.months
    )


def tried(found: WeekAhead) -> tuple[Change, ...] | None:
    """Return every remedy that was tried, None until that is worked out."""
    if found.tried is None:
        return None
    return tuple(change(found.inputs, remedy) for remedy in found.tried)


def carrying(found: WeekAhead) -> tuple[Change, ...] | None:
    """Return the remedies that are enough."""
    every = tried(found)
    return None if every is None else tuple(one for one in every if one.works)


def cheapest(found: WeekAhead) -> str | None:
    """Return the smallest remedy that is enough, in words."""
    enough = carrying(found)
    return str(enough[0]) if enough else None


def way_out(found: WeekAhead) -> str:
    """Return what to do about a week that fails, as a sentence."""
    enough = carrying(found)
    if enough is None:
        return "What would carry it is still being worked out."
    if enough:
        return f"What asks least: {enough[0]}; then {then(enough[0])}."
    return NONE if found.bank.charges else NO_CHARGE


def outlook_said(found: WeekAhead) -> str:
    """Return what comes of such days, in words."""
    return said(found.outlook)
