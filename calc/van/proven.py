"""What of a van is not proven: values that nobody saw, that were only told, or that are blank.

Which values matter depends on the rest: a fuse that is not there has no family.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from enum import IntEnum

from calc.units.compare import at_most
from calc.van.facts import FUELS
from calc.van.facts_wiring import BARE_AT_MOST, leaves_bank
from calc.van.judging import known, there
from calc.van.keys import Key, Walk
from calc.van.record import KINDS, Part, Van
from calc.van.values import Evidence, State, Value

_NAMES = frozenset({"name", "place", "note", "who", "instrument", "inspector", "date", "when"})
_COULD_NOT_TELL = frozenset({"not-known", "not-said", "not-tested", "not-checked"})
_IDLE = frozenset({"stays_live", "isolator", "fuse_voltage"})


class Gap(IntEnum):
    """Why a value is not proven, the gravest last."""

    BLANK = 1
    NOT_SEEN = 2
    TOLD = 3


@dataclass(frozen=True)
class Unproven:
    """A value of a part that is not proven.

    `idle` tells that nothing depends on it as far as is known, and somebody wrote it down.
    """

    part: Part
    key: Key
    gap: Gap
    idle: bool = False

    @property
    def place(self) -> str:
        """Where it stands in the record."""
        return f"{self.part.place}.{self.key.id}"

    @property
    def label(self) -> str:
        """Its name, as it stands in a sentence."""
        first, rest = self.key.field.label[:1], self.key.field.label[1:]
        label = first + rest if rest[:1].isupper() else first.lower() + rest
        return label.split(",")[0].split(" (")[0]


def gap_of(value: Value, inspection: bool) -> Gap | None:
    """Return why a value is not proven, or None where it is.

    An inspector who writes that a thing is not known, or not tested, has not seen it; nor has one
    who has only the plan's word for it.
    """
    if value.state is State.NOT_SEEN or value.only_planned:
        return Gap.NOT_SEEN
    said = value.reading.value if inspection and value.reading else None
    if isinstance(said, str) and said in _COULD_NOT_TELL:
        return Gap.NOT_SEEN
    if value.state is State.BLANK:
        return Gap.BLANK
    last = value.statements[-1] if value.statements else None
    return Gap.TOLD if last and last.evidence is Evidence.TOLD else None


def _fused(van: Van, part: Part) -> bool:
    return there(part, "fuse") is not False


def _chassis(van: Van, part: Part) -> bool:
    return known(part, "return_by") == "chassis"


def _inspected(van: Van, part: Part) -> bool:
    return van.inspection


def _plugged(van: Van, part: Part) -> bool:
    return known(part, "inlet") not in ("no", "none")


def _tested(van: Van, part: Part) -> bool:
    return _plugged(van, part) and van.inspection


def _several(van: Van, part: Part) -> bool:
    own = [one for one in van.all("batteries") if known(one, "role") != "starter"]
    count = sum((one.si("units") or 1) for one in own)
    return count > 1


def _lithium(van: Van, part: Part) -> bool:
    found = {known(one, "chemistry") for one in van.all("batteries")}
    return bool(found & {"LFP", None}) or not found


def _vented(van: Van, part: Part) -> bool:
    return {known(one, "chemistry") for one in van.all("batteries")} != {"LFP"}


def _by_charger(van: Van, part: Part) -> bool:
    return known(part, "method") != "relay"


def _by_relay(van: Van, part: Part) -> bool:
    return known(part, "method") != "charger"


def _burner(van: Van, part: Part) -> bool:
    return known(part, "fuel") in (*FUELS, None)


def _by_fuel(van: Van, part: Part) -> bool:
    return known(part, "way") in ("fuel", None)


def _by_power(van: Van, part: Part) -> bool:
    return known(part, "way") in ("bank", "shore", None)


def _light(van: Van, part: Part) -> bool:
    return known(part, "load") in ("light", None)


def _appliance(van: Van, part: Part) -> bool:
    return known(part, "load") not in ("light", "fan", "socket", "electronics")


def _no_power(van: Van, part: Part) -> bool:
    return not part["power"].known


def _no_current(van: Van, part: Part) -> bool:
    return not part["current"].known


def _breaker(van: Van, part: Part) -> bool:
    return known(part, "kind") != "isolator"


def _both_sources(van: Van, part: Part) -> bool:
    return _plugged(van, part) and van.one("inverter") is not None


def _plus(van: Van, part: Part) -> bool:
    return known(part, "pole") != "minus"


def _plus_fused(van: Van, part: Part) -> bool:
    return _plus(van, part) and _fused(van, part)


def _never(van: Van, part: Part) -> bool:
    return False


def _measured(van: Van, part: Part) -> bool:
    return part["drop"].known


def _no_vents(van: Van, part: Part) -> bool:
    return not part["vents"].known


def _cable(van: Van, part: Part) -> bool:
    """A cable has two ends; what else is fed is its own end."""
    return part.kind.id == "cables"


def _main_fuse(van: Van, part: Part) -> bool:
    """Whether a part has the first fuse behind the bank, or may have it."""
    return _fused(van, part) and leaves_bank(van, part)


def _unfused_far(van: Van, part: Part) -> bool:
    length = part.si("unfused")
    return length is not None and not at_most(length, BARE_AT_MOST) and _main_fuse(van, part)


Applies = Callable[[Van, Part], bool]
# When a key matters, by kind and key, or by key for every kind; without a line it always does.
MATTERS: Mapping[str, Applies] = {
    "fuse_family": _fused, "bond_point": _chassis, "fused": _never, "measured_drop": _never,
    "circuits.switch": _appliance, "circuits.dimmer": _light, "circuits.current": _no_power,
    "circuits.power": _no_current, "circuits.start_current": _never, "circuits.allowed": _never,
    "cables.fuse": _plus, "cables.fuse_family": _plus_fused, "cables.return_to": _never,
    "to": _cable,
    "cables.return_by": _never, "cables.bond_point": _never, "cables.limit": _never,
    "alternator.charger_limit": _by_charger, "alternator.stops_by": _by_charger,
    "alternator.charger_efficiency": _by_charger, "alternator.engine_voltage": _by_relay,
    "alternator.fused": lambda van, part: True, "alternator.return_to": _never,
    "management.cold_cut_off": _lithium, "management.fitted": _lithium, "management.peak": _never,
    "management.port": _never, "management.draw": _never, "management.stop_signal": _lithium,
    "bank.take_off": _several, "bank.matched": _several, "bank.vents": _vented,
    "bank.usable": _never, "bank.rested_voltage": _never, "batteries.resistance": _never,
    "batteries.unit_current": _never, "batteries.role": _never,
    "mains.breaker": _plugged, "mains.switching": _plugged, "mains.residual": _plugged,
    "mains.residual_type": _plugged, "mains.earth": _plugged, "mains.polarity": _tested,
    "mains.changeover": _both_sources, "mains.earth_resistance": _tested,
    "mains.insulation_resistance": _tested, "mains.supply_voltage": _plugged,
    "mains.supply_limit": _plugged, "mains.other_load": _never, "mains.practice": _never,
    "inverter.surge": _never, "inverter.lowest_voltage": _never, "inverter.return_to": _never,
    "isolators.interrupting": _breaker, "isolators.poles": _never,
    "heater.exhaust": _burner, "water_heater.fuel": _by_fuel, "water_heater.exhaust": _by_fuel,
    "water_heater.power": _by_power, "water_heater.from": _never, "water_heater.to": _never,
    "water_heater.hours": _never, "alarms.tested": _inspected, "alarms.expiry": _inspected,
    "joints.tug": _inspected, "joints.torque": _never, "joints.current": _measured,
    "joints.full_current": _measured, "joints.drop": _never, "joints.maker_torque": _never,
    "bay.fan": _no_vents, "shore.power_factor": _never,
    "panels.fuse": _never, "panels.fuse_family": _never, "panels.max_power_voltage": _never,
    "panels.max_power_current": _never, "panels.series_fuse": _never,
    "patterns.own_skies": lambda van, part: known(part, "climate") == "own",
    "unfused": _main_fuse, "sheathed": _unfused_far,
    "bars.cover": _plus, "panels.isolator": lambda van, part: True,
    "converters.standby": _never, "van.people": _never,
}  # fmt: skip
_WHOLE_KINDS = ("log",)  # what nobody looks for


def matters(van: Van, part: Part, key: Key) -> bool:
    """Return whether a value can change a judgement on this van."""
    if key.id in _NAMES or (key.id in _IDLE and f"{part.kind.id}.{key.id}" not in MATTERS):
        return False
    rule = MATTERS.get(f"{part.kind.id}.{key.id}") or MATTERS.get(key.id)
    return rule is None or rule(van, part)


def unproven(van: Van, part: Part) -> Iterator[Unproven]:
    """Yield what of a part is not proven, and matters.

    In a plan a blank is not told of a value that the schedule chooses, or that nobody needs.
    """
    if part.kind.id == "log":
        return
    for key in part.kind.keys:
        gap = gap_of(part[key.id], van.inspection)
        if gap is None:
            continue
        if not matters(van, part, key):
            if part[key.id].statements and gap is Gap.NOT_SEEN and key.id not in _NAMES:
                yield Unproven(part, key, gap, idle=True)
            continue
        if gap is Gap.BLANK and not key.safety:
            continue
        if gap is Gap.BLANK and key.id in CHOSEN:
            continue
        if gap is Gap.TOLD and not key.safety:
            continue
        yield Unproven(part, key, gap)


CHOSEN = frozenset({"conductor", "fuse", "fuse_family"})  # what the schedule chooses in a plan


def kinds_not_seen(van: Van) -> Iterator[str]:
    """Yield the kinds of parts of which an inspector could not tell whether there are any."""
    for kind in KINDS.values():
        if kind.id not in _WHOLE_KINDS and van.stated(kind.id) is State.NOT_SEEN:
            yield kind.id


def at_a_desk(key: Key) -> bool:
    """Return whether a value is asked of papers or the owner, not looked for in the van."""
    return key.walk is Walk.DESK
