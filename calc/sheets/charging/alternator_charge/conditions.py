"""When a step, a verdict or a caution of alternator-charge is said."""

from collections.abc import Callable
from types import SimpleNamespace

from calc.electrical.limits import HOT_AIR
from calc.energy.limits import COOL, FROST_MARGIN, WARM
from calc.sheets.parts.wire import hot_copper, only_as_printed, rests_on_terminals, too_thin_alone
from calc.units.compare import at_least, at_most

NEAR_FROST = 10.0  # °C, below which makers of LFP ask for less current: common practice, no source
STATES = {"LFP": "states-lfp", "AGM": "states-agm", "gel": "states-gel", "flooded": "states-flooded"}


def read(v: SimpleNamespace) -> bool:
    return not v.measured


def joins(v: SimpleNamespace) -> bool:
    return bool(v.relay and v.flows)


def fed(v: SimpleNamespace) -> bool:
    return bool(v.input_most is not None)


def gives(v: SimpleNamespace) -> bool:
    return bool(v.flows and not v.relay)


def falls(v: SimpleNamespace) -> bool:
    return bool(v.flows and v.tapers and v.going_in > 0)


def no_rise(v: SimpleNamespace) -> bool:
    return joins(v) and not v.counted


def raised(v: SimpleNamespace) -> bool:
    return joins(v) and not at_most(v.begins, v.bank_voltage)


def raised_for(chemistry: str) -> Callable[[SimpleNamespace], bool]:
    return lambda v: raised(v) and v.chemistry == chemistry


def lithium(v: SimpleNamespace) -> bool:
    return bool(v.chemistry == "LFP")


def chilly(v: SimpleNamespace) -> bool:
    return lithium(v) and v.may_charge and v.temperature < NEAR_FROST


def frosty(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_least(v.temperature, 0.0)


def frozen(v: SimpleNamespace) -> bool:
    return v.freezes is not None and at_most(v.temperature, v.freezes + FROST_MARGIN)


def off_room(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not (at_least(v.temperature, COOL) and at_most(v.temperature, WARM))


def cable_warns(v: SimpleNamespace) -> bool:
    crowded = v.uncounted_bundle and not at_most(v.fuse, v.crowded)
    return crowded or hot_copper(v) or rests_on_terminals(v) or only_as_printed(v) or too_thin_alone(v) or not at_most(v.air, HOT_AIR)
