"""Judgements on what warns and what burns aboard: alarms, and the gas installation."""

from __future__ import annotations

# fmt: off
from collections.abc import Callable, Iterator

from calc.judge import Level
from calc.van.facts import Alarm, Alarms, Gas, alarms, each_alarm, gas
from calc.van.judging import Asked, Fact, Mend, VanRule


def _alarm(kind: str, text: str, place: str) -> Callable[[Alarms], Iterator[Mend]]:
    """Return the mend that adds an alarm of a kind with a battery of its own."""

    def mends(_: Alarms) -> Iterator[Mend]:
        texts = {"kind": kind, "place": place, "tested": "it sounded", "supply": "its own battery", "expiry": "2035-01"}
        yield Mend(text=text, adds=(("alarms", texts),))

    return mends


def _set(text: str, **values: str) -> Callable[[Fact], Iterator[Mend]]:
    """Return the mend that sets `values` of a part."""

    def mends(fact: Fact) -> Iterator[Mend]:
        yield Mend(text=text, changes={f"{fact.at}.{key}": value for key, value in values.items()})

    return mends


def _no_co(a: Alarms) -> bool:
    return a.flame and a.lacks("co")


NO_CO_ALARM = VanRule[Alarms](
    id="van.no-carbon-monoxide-alarm", level=Level.STOP, when=_no_co, source="practice",
    headline="Light nothing before a carbon monoxide alarm near the beds is fitted and tested.",
    text="Danger of death: carbon monoxide has no smell. Anything that burns fuel aboard needs an alarm near the beds.",
    mends=_alarm("co", "Fit a carbon monoxide alarm near the beds, and press its test button.", "near the beds"),
    covers=frozenset({"flame.no-alarm", "flame.unchecked"}),
)
NO_SMOKE_ALARM = VanRule[Alarms](
    id="van.no-smoke-alarm", level=Level.CAUTION, when=lambda a: a.lacks("smoke"), source="practice",
    headline="Fit a smoke alarm on the ceiling, away from the cooker: sleepers do not smell smoke.",
    mends=_alarm("smoke", "Fit a smoke alarm on the ceiling, away from the cooker.", "ceiling"),
)
NO_GAS_ALARM = VanRule[Alarms](
    id="van.no-gas-alarm", level=Level.STOP, when=lambda a: a.gas and a.lacks("gas"), source="practice",
    headline="Close the cylinder until a gas alarm is fitted low down: leaked gas gathers on the floor.",
    text="Explosion: gas is heavier than air, and sleepers do not smell it. An alarm just above the floor warns before it lights.",
    mends=_alarm("gas", "Fit a gas alarm just above the floor.", "just above the floor"),
)
VITAL_SILENT = VanRule[Alarm](
    id="van.carbon-monoxide-alarm-silent", level=Level.STOP, when=lambda a: a.vital and a.tested == "silent", source="practice", key="tested",
    headline="Light nothing: the carbon monoxide alarm does not sound. Replace it and press its test button.",
    mends=_set("Replace the alarm and press its test button.", tested="it sounded", expiry="2035-01"),
    covers=frozenset({"flame.no-alarm"}),
)
VITAL_EXPIRED = VanRule[Alarm](
    id="van.carbon-monoxide-alarm-expired", level=Level.STOP, when=lambda a: a.vital and a.expired is True, source="practice", key="expiry",
    headline="Light nothing: the carbon monoxide alarm expired in {expiry}. Replace it.",
    mends=_set("Replace the alarm and press its test button.", tested="it sounded", expiry="2035-01"),
)
GAS_SILENT = VanRule[Alarm](
    id="van.gas-alarm-silent", level=Level.STOP, when=lambda a: a.of_gas and a.tested == "silent", source="practice", key="tested",
    headline="Close the cylinder: the gas alarm is silent. Replace it and press its test button.",
    text="Explosion: leaked gas gathers on the floor, where nobody smells it.",
    mends=_set("Replace the alarm and press its test button.", tested="it sounded"),
)
SILENT = VanRule[Alarm](
    id="van.alarm-silent", level=Level.CAUTION, when=lambda a: not a.vital and not a.of_gas and a.tested == "silent", source="practice", key="tested",
    headline="Replace the {part} or its battery: it stays silent when tested.",
    mends=_set("Replace the alarm or its battery, and press its test button.", tested="it sounded"),
)
EXPIRED = VanRule[Alarm](
    id="van.alarm-expired", level=Level.CAUTION, when=lambda a: not a.vital and a.expired is True, source="practice", key="expiry",
    headline="Replace the {part}: it expired in {expiry}.",
    mends=_set("Replace the alarm and press its test button.", tested="it sounded", expiry="2035-01"),
)
BEHIND_ISOLATOR = VanRule[Alarm](
    id="van.alarm-behind-isolator", level=Level.CAUTION, when=lambda a: a.supply == "behind-isolator", source="practice", key="supply",
    headline="Feed the {part} ahead of the isolator: behind it, an open isolator silences it.",
    mends=_set("Feed it from the bank ahead of the isolator, by its own small fuse.", supply="ahead-of-isolator"),
)
NO_DATE = VanRule[Alarms](
    id="van.expiry-not-judged", level=Level.NOTE, when=lambda a: a.undated, source="practice", key="date",
    headline="Add a date to this record: no alarm's expiry is judged without one.",
)
LOCKER_OPEN = VanRule[Gas](
    id="van.gas-locker-open-inside", level=Level.STOP, when=lambda g: g.locker == "open-inside", source="practice", key="locker",
    headline="Close the cylinder and carry it out: a locker open to the inside fills the van with leaked gas.",
    text="Explosion: gas is heavier than air. A locker is sealed from the inside and vented low to the outside, by a licensed fitter.",
    mends=_set("Have the locker sealed from the inside and vented low to the outside.", locker="sealed-and-vented"),
)
SPARKS = VanRule[Gas](
    id="van.gas-sparks", level=Level.STOP, when=lambda g: g.sparks == "yes", source="practice", key="sparks",
    headline="Close the cylinder: take every switch, relay, pump and battery out of the gas locker first.",
    text="Explosion: a spark from a relay or pump ignites leaked gas. None belongs in the locker.",
    mends=_set("Take every part that can spark out of the locker.", sparks="no"),
)
FLUELESS = VanRule[Gas](
    id="van.cooker-without-air", level=Level.STOP, when=lambda g: g.flueless == "no", source="practice", key="flueless",
    headline="Cook with a vent open only: a flame without a flue poisons a closed van.",
    text="Danger of death: a cooker uses air from the room and leaves carbon monoxide there. Never heat with it.",
    mends=_set("Open a vent whenever the cooker is lit, and never heat with it.", flueless="yes"),
)

OF_ALL = (NO_CO_ALARM, NO_SMOKE_ALARM, NO_GAS_ALARM, NO_DATE)
OF_EACH = (VITAL_SILENT, VITAL_EXPIRED, GAS_SILENT, SILENT, EXPIRED, BEHIND_ISOLATOR)
OF_GAS = (LOCKER_OPEN, SPARKS, FLUELESS)
ASKED = (Asked(alarms, OF_ALL), Asked(each_alarm, OF_EACH), Asked(gas, OF_GAS))
