"""Judgements on a schedule as a whole: bars and shunt, breakers, fuses at both ends and in order."""

from __future__ import annotations

# fmt: off
from collections.abc import Iterator
from math import ceil

from calc.judge import Level
from calc.units.compare import at_least, at_most
from calc.van.judging import Asked, Mend, VanRule
from calc.van.loading import (
    BatteryFuse,
    Breaking,
    Carrying,
    Ends,
    InOrder,
    battery_fuses,
    breaking,
    carrying,
    ends,
    in_order,
)


def _set(text: str, at: str, **values: str) -> Iterator[Mend]:
    """Yield the mend that sets `values` of the part at a place."""
    yield Mend(text=text, changes={f"{at}.{key}": value for key, value in values.items()})


def _amps(value: float) -> str:
    return f"{ceil(value):g} A"


def _overloaded(c: Carrying) -> bool:
    return c.rating is not None and not at_least(c.rating, c.most)


BAR_OVERLOADED = VanRule[Carrying](
    id="van.bar-overloaded", level=Level.STOP, source="practice", key="rating",
    when=lambda c: c.at.startswith("bars") and _overloaded(c),
    headline="Use a larger bar for {part}: it is rated {rating}, and {most} may flow.",
    text="Fire: an overloaded bar heats its studs and lugs.",
    mends=lambda c: _set("Fit a bar rated for all that may flow.", c.at, rating=_amps(c.most)),
)
SHUNT_OVERLOADED = VanRule[Carrying](
    id="van.shunt-overloaded", level=Level.STOP, source="practice", key="rating",
    when=lambda c: c.at.startswith("shunt") and _overloaded(c),
    headline="Use a larger shunt: it is rated {rating}, and {most} may flow.",
    mends=lambda c: _set("Fit a shunt rated for all that may flow.", c.at, rating=_amps(c.most)),
)
BREAKER_CANNOT_INTERRUPT = VanRule[Breaking](
    id="van.breaker-cannot-interrupt", level=Level.STOP, source="practice", key="interrupting",
    when=lambda b: b.fault is not None and b.interrupts is not None and not at_least(b.interrupts, b.fault),
    headline="Replace {part}: a short there passes {fault}, and it breaks {interrupts}.",
    text="Fire: a breaker that cannot break the fault can weld shut or burst. Fit a fuse ahead that can break it, or a stronger breaker.",
    mends=lambda b: _set("Fit a breaker that can break the short at that point.", b.at, interrupting=_amps(b.fault or 0.0)),
)
BATTERIES_SHARE_A_FUSE = VanRule[BatteryFuse](
    id="van.batteries-without-own-fuses", level=Level.CAUTION, source="abyc-bank", key="fuse",
    when=lambda b: b.none and b.units is not None and b.units > 1,
    headline="Fit a fuse at the post of each battery: the others feed a short in one of them.",
    text="Fire: batteries in parallel drive their current into the one that fails, and that current does not pass the main fuse.",
)
BATTERY_FUSE_TOO_WEAK = VanRule[BatteryFuse](
    id="van.battery-fuse-cannot-interrupt", level=Level.STOP, source="practice", key="fuse_family",
    when=lambda b: b.duty is not None and b.duty.cannot_interrupt,
    headline="Replace the fuse of {part}: a short passes {duty.fault_current}, and its family breaks {duty.interrupting_rating}.",
    text="Fire: a fuse that cannot break the fault can burst and burn. Class T suits most lithium batteries.",
    mends=lambda b: _set("Fit a class T fuse at each battery's post.", b.at, fuse_family="cartridge, class T"),
)
BATTERY_FUSE_VOLTAGE = VanRule[BatteryFuse](
    id="van.battery-fuse-voltage-too-low", level=Level.STOP, source="practice", key="fuse_family",
    when=lambda b: b.duty is not None and b.duty.voltage_too_low,
    headline="Replace the fuse of {part}: its family is not rated for {duty.voltage} d.c.",
    mends=lambda b: _set("Fit a class T fuse at each battery's post.", b.at, fuse_family="cartridge, class T"),
)
FUSED_AT_ONE_END = VanRule[Ends](
    id="van.fused-at-one-end", level=Level.STOP, source="33cfr-place", key="fused",
    when=lambda e: e.battery and e.fused is False,
    headline="Fit a fuse at each end of {part}: there is a battery at both.",
    text="Fire: the battery at the far end feeds a short until the cable burns through.",
    mends=lambda e: _set("Fit a fuse at each end.", e.at, fused="both ends"),
)
CHARGER_END_OPEN = VanRule[Ends](
    id="van.charger-end-without-fuse", level=Level.CAUTION, source="practice", key="fused",
    when=lambda e: not e.battery and e.fused is False and e.limit is not None and e.ampacity is not None and not at_most(e.limit, e.ampacity),
    headline="Fit a fuse at both ends of {part}: it can feed {limit} into a wire rated {ampacity}.",
    mends=lambda e: _set("Fit a fuse at each end.", e.at, fused="both ends"),
)
CHARGER_END = VanRule[Ends](
    id="van.charger-end-by-its-limit", level=Level.ADVICE, source="practice", key="fused",
    when=lambda e: not e.battery and e.fused is False and e.limit is not None and e.ampacity is not None and at_most(e.limit, e.ampacity),
    headline="Fit a fuse at the charger's end of {part} too: it protects the wire if the charger fails.",
    mends=lambda e: _set("Fit a fuse at each end.", e.at, fused="both ends"),
)
WRONG_WAY_ROUND = VanRule[InOrder](
    id="van.fuse-order-reversed", level=Level.CAUTION, source="practice", key="fuse",
    when=lambda o: not at_most(o.fuse, o.ahead),
    headline="Look at the fuses: {fuse} of {part} is larger than {ahead} ahead of it, {ahead_part}.",
    text="The fuse ahead opens first and cuts off its other loads. Either they are swapped, or one protects the wrong wire.",
)

RULES = (
    BAR_OVERLOADED, SHUNT_OVERLOADED, BREAKER_CANNOT_INTERRUPT, BATTERIES_SHARE_A_FUSE, BATTERY_FUSE_TOO_WEAK,
    BATTERY_FUSE_VOLTAGE, FUSED_AT_ONE_END, CHARGER_END_OPEN, CHARGER_END, WRONG_WAY_ROUND,
)
ASKED = (
    Asked(carrying, (BAR_OVERLOADED, SHUNT_OVERLOADED)), Asked(breaking, (BREAKER_CANNOT_INTERRUPT,)),
    Asked(battery_fuses, (BATTERIES_SHARE_A_FUSE, BATTERY_FUSE_TOO_WEAK, BATTERY_FUSE_VOLTAGE)),
    Asked(ends, (FUSED_AT_ONE_END, CHARGER_END_OPEN, CHARGER_END)), Asked(in_order, (WRONG_WAY_ROUND,)),
)
