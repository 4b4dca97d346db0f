"""The tables of week-ahead, row by row, and its remedies in words."""

from dataclasses import dataclass, replace

from calc.energy.balance import HOURS
from calc.energy.forecast import WeekAhead, shore_offered
from calc.energy.outlook import HORIZON, Outlook
from calc.energy.remedies import Kind, Remedy
from calc.energy.week import Question, WeekInputs
from calc.units.constants import HOUR
from calc.units.kinds import CHARGE, CURRENT, POWER, TEMPERATURE, TIME
from calc.units.quantities import Kind as KindOfQuantity
from calc.units.shown import UP, quantity_text

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
    """One change in words, the share [0..1] that it asks, the lowest state with it, what follows.

    `asks` is what lasts the days asked about, `for_good` what lasts if all days are like them, `do`
    the change as something to do.
    """

    name: str
    asks: str
    do: str
    for_good: str
    share: float
    lowest: float
    outlook: str
    works: bool

    @property
    def enough(self) -> str:
        """Whether it carries the days asked about, in a word."""
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


def _time(seconds: float) -> str:
    unit = "day" if seconds >= 2 * HOURS * HOUR else "hour"
    return quantity_text(seconds, TIME, unit=unit)


def change(inputs: WeekInputs, one: Remedy) -> Change:
    """Return a change of `inputs` in words.

    The lowest state is told as far as loads draw it down: below the floor goes only what the bank
    loses by itself.
    """
    name, asks = _words(inputs, one)
    first = None
    if one.besides:
        first = replace(one, kind=one.besides, amount=one.besides_amount)
        other, amount = _words(inputs, first)
        name = f"{other}{f' ({amount})' if one.besides_amount else ''} and {name}"
    do = _to_do(one)
    return Change(
        name=name,
        asks=asks,
        do=f"{_to_do(first)} and {do}" if first else do,
        for_good=_for_good(inputs, one),
        share=one.share,
        lowest=max(one.lowest, inputs.bank.floor),
        outlook=said(one.outlook),
        works=one.works,
    )


def _for_good(inputs: WeekInputs, one: Remedy) -> str:
    """Return what lasts for good, in words."""
    if inputs.question is Question.TRIP:
        return "not asked"
    if not one.lasts:
        return "not enough"
    if one.amount == one.for_good:
        return "the same"
    return _words(inputs, replace(one, amount=one.for_good))[1].split(" instead of ")[0]


def _words(inputs: WeekInputs, one: Remedy) -> tuple[str, str]:
    """Return what is changed and to what, rounded to what is enough."""
    amount = one.amount or 0.0
    match one.kind:
        case Kind.DRIVE:
            hours = [
                quantity_text(time, TIME, rounding=UP, unit="hour")
                for time in (amount, inputs.drive_hours)
            ]
            return "more driving", _instead(f"{hours[0]} a day", inputs.drive_hours and hours[1])
        case Kind.SHORE:
            return "shore power", "every night" if amount == 1 else f"every {amount:g} nights"
        case Kind.ARRAY:
            return "more panels", _grown(amount, inputs.array, POWER)
        case Kind.BANK:
            return "a larger bank", _grown(amount, inputs.capacity, CHARGE)
        case Kind.CHARGER:
            return "a stronger charger while driving", _grown(amount, inputs.charger, CURRENT)
        case Kind.SHORE_CHARGER:
            return "a stronger charger on shore power", _grown(amount, inputs.lead, CURRENT)
        case Kind.WARMTH:
            return "a warmer bank", _instead(
                quantity_text(amount, TEMPERATURE), quantity_text(inputs.temperature, TEMPERATURE)
            )
        case Kind.OFF:
            return "inverter off while not used", "switched by hand"
        case Kind.ROUTE:
            return "small appliances for battery voltage", "with the same watts, no inverter"
        case Kind.HALF:
            return one.load, "half as long"
    return one.load, "left out"


def _to_do(one: Remedy) -> str:
    """Return a change as something to do, its amount rounded to what is enough."""
    amount = one.amount or 0.0
    match one.kind:
        case Kind.DRIVE:
            return f"drive {quantity_text(amount, TIME, rounding=UP, unit='hour')} a day"
        case Kind.SHORE:
            return "plug in every night" if amount == 1 else f"plug in every {amount:g} nights"
        case Kind.ARRAY:
            return f"fit {quantity_text(amount, POWER, rounding=UP)} of panels"
        case Kind.BANK:
            return f"fit a bank of {quantity_text(amount, CHARGE, rounding=UP)}"
        case Kind.CHARGER:
            return f"charge with {quantity_text(amount, CURRENT, rounding=UP)} while driving"
        case Kind.SHORE_CHARGER:
            return f"charge with {quantity_text(amount, CURRENT, rounding=UP)} on shore power"
        case Kind.WARMTH:
            return f"warm the bank to {quantity_text(amount, TEMPERATURE)}"
        case Kind.OFF:
            return "switch the inverter off by hand"
        case Kind.ROUTE:
            return "take small appliances off the inverter"
        case Kind.HALF:
            return f"run {one.load} half as long"
    return f"leave out {one.load}"


def _grown(amount: float, there: float, kind: KindOfQuantity) -> str:
    return _instead(quantity_text(amount, kind, rounding=UP), there and quantity_text(there, kind))


def _instead(new: str, old: str | float) -> str:
    return f"{new} instead of {old or 'none'}"


LOST = (
    "Inverter, conversion",
    "Inverter, idle",
    "Charging the bank",
    "High current",
    "Self-discharge",
    "Solar not used",
)
NONE = "No change tried here is enough, alone or in pairs: put several together."
NO_CHARGE = "At this temperature it takes no charge: warm the bank first, then add sources."


def brought(found: WeekAhead) -> tuple[Brought, ...]:
    """Return what each source offered and brought."""
    flows, day = found.flows, found.day
    return (
        Brought(name="Sun", offered=found.inputs.days * day.sun, brought=flows.sun),
        Brought(name="Driving", offered=found.inputs.days * day.drive, brought=flows.drive),
        Brought(name="Shore power", offered=shore_offered(found.inputs), brought=flows.shore),
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
        return "What would help is still being calculated."
    if enough:
        days = "for this trip" if found.trip else "for this week only"
        if not found.trip and enough[0].outlook == NEVER:
            days = "for good"
        return f"Smallest change {days}: {enough[0].do}."
    return NONE if found.bank.charges else NO_CHARGE


def outlook_said(found: WeekAhead) -> str | None:
    """Return what comes of such days, in words; None of a trip, which is over."""
    return None if found.trip else said(found.outlook)
