"""What sources and patterns of use say for worksheets: panels, regulators, chargers, weather."""

from __future__ import annotations

from calc.van.came import Came, agreed, amps, key_of, key_of_kind, unknown, volts, watts
from calc.van.from_bank import RELAY
from calc.van.record import Part, Van
from calc.van.values import State
from calc.van.worked import attempted

OWN_CLIMATE = "own"
NO_POWER, NO_CURRENT = "0 W", "0 A"
CHARGERS = (
    ("alternator", "charger_limit"),
    ("shore", "charger"),
    ("regulators", "current_limit"),
)


def drive_charger(van: Van, part: Part | None) -> Came | None:
    """The charger while driving; of a relay, which has no limit of its own, its mean current."""
    if van.stated("alternator") is State.NONE:
        return Came(NO_CURRENT, "alternator")
    alternator = van.one("alternator")
    if alternator is not None and alternator.choice("method") == RELAY:
        return _mean_of_relay(van, alternator)
    return key_of_kind(van, "alternator", "charger_limit")


def _mean_of_relay(van: Van, alternator: Part) -> Came:
    """Return the mean current through a relay over a drive, as its worksheet has it."""
    from calc.van.bind import filled

    own = filled(van, "alternator-charge", alternator)
    if own.lacking:
        return unknown(own.missing[own.lacking[0]])
    found = attempted("alternator-charge", own.texts)
    if found is None:
        return unknown(alternator.place)
    charge = found.values["charge"] or 0.0  # none where nothing flows into the bank
    return amps(charge / found.values["hours"], alternator.place)


def shore_charger(van: Van, part: Part | None) -> Came | None:
    """The charger on shore power."""
    if van.stated("shore") is State.NONE:
        return Came(NO_CURRENT, "shore")
    return key_of_kind(van, "shore", "charger")


def recovery(van: Van, part: Part | None) -> Came | None:
    """What charges the bank after a trip: as stated, else what the van has."""
    own = key_of(part, "recovery") if part is not None else None
    if (
        part is None
        or own is None
        or part["recovery"].state is not State.DEFAULT
        or van.all("shore")
    ):
        return own
    drives = van.all("alternator") and (part.si("drive_hours") or 0.0) > 0
    return Came("driving" if drives else "sun" if van.all("panels") else own.text, own.place)


def charger_current(van: Van, part: Part | None) -> Came | None:
    """The rated current of the largest charger."""
    found = [
        amps(current, f"{one.place}.{name}")
        for kind, name in CHARGERS
        for one in van.all(kind)
        if (current := one.si(name)) is not None
    ]
    return max(found, key=lambda one: one.si or 0.0, default=None)


def _panels(van: Van, part: Part | None) -> tuple[Part, ...]:
    return (part,) if part is not None and part.kind.id == "panels" else van.all("panels")


def array(van: Van, part: Part | None) -> Came:
    """The power of the panels together."""
    found = _panels(van, part)
    if not found:
        return Came(NO_POWER if van.stated("panels") is State.NONE else "", "panels")
    total = 0.0
    for one in found:
        power = 1.0
        for name in ("power", "series", "strings"):
            value = one.si(name)
            if value is None:
                return unknown(f"{one.place}.{name}")
            power *= value
        total += power
    return watts(total, f"{found[0].place}.power")


def _largest(van: Van, part: Part | None, name: str) -> Came | None:
    found = _panels(van, part)
    if not found:
        return None
    return key_of(max(found, key=lambda one: one.si("power") or 0.0), name)


def array_tilt(van: Van, part: Part | None) -> Came | None:
    """The tilt of the largest panels."""
    return _largest(van, part, "tilt")


def array_facing(van: Van, part: Part | None) -> Came | None:
    """Where the largest panels face."""
    return _largest(van, part, "facing")


def array_mount(van: Van, part: Part | None) -> Came | None:
    """How the largest panels are mounted."""
    return _largest(van, part, "mount")


def string_voltage(van: Van, part: Part | None) -> Came | None:
    """The voltage of a string at its best power."""
    found = _panels(van, part)
    if not found:
        return None
    one = found[0]
    voltage, series = one.si("max_power_voltage"), one.si("series")
    if voltage is None or series is None:
        return unknown(f"{one.place}.max_power_voltage")
    return volts(voltage * series, f"{one.place}.max_power_voltage")


def _regulator(van: Van, part: Part | None, name: str) -> Came | None:
    if part is not None and part.kind.id == "panels":
        if not part["regulator"].known:
            return unknown(f"{part.place}.regulator")
        own = van.by_id(part.text("regulator"))
        return key_of(own, name) if own is not None and name in own.values else None
    found = van.all("regulators")
    return agreed(found, name)


def regulator_kind(van: Van, part: Part | None) -> Came | None:
    """The kind of the panels' regulator."""
    return _regulator(van, part, "kind")


def regulator_limit(van: Van, part: Part | None) -> Came | None:
    """The largest charging current of the panels' regulator."""
    return _regulator(van, part, "current_limit")


def regulator_volts(van: Van, part: Part | None) -> Came | None:
    """The highest panel voltage that the regulator takes."""
    return _regulator(van, part, "max_voltage")


def regulator_input(van: Van, part: Part | None) -> Came | None:
    """The largest short-circuit current that the regulator takes."""
    return _regulator(van, part, "max_short_current")


def coefficient_of_voltage(van: Van, part: Part | None) -> Came | None:
    """The panel's temperature coefficient of voltage, for each kelvin."""
    if part is None:
        return None
    share = part.si("coefficient")
    text = "" if share is None else f"{share * 100:.6g} %/K"
    return Came(text, f"{part.place}.coefficient")


def pattern_of(van: Van, part: Part | None) -> Part | None:
    """Return the pattern of use that a sheet is opened for, else the first."""
    return part if part is not None and part.kind.id == "patterns" else van.one("patterns")


def _pattern(van: Van, part: Part | None, name: str) -> Came | None:
    found = pattern_of(van, part)
    return key_of(found, name) if found is not None else unknown("patterns")


def pattern_latitude(van: Van, part: Part | None) -> Came | None:
    """Where the pattern is."""
    return _pattern(van, part, "latitude")


def pattern_month(van: Van, part: Part | None) -> Came | None:
    """The month of the pattern."""
    return _pattern(van, part, "month")


def pattern_sky(van: Van, part: Part | None) -> Came | None:
    """The sky of the pattern."""
    return _pattern(van, part, "sky")


def pattern_climate(van: Van, part: Part | None) -> Came | None:
    """The climate of the pattern."""
    return _pattern(van, part, "climate")


def pattern_own_skies(van: Van, part: Part | None) -> Came | None:
    """The twelve skies of the pattern, where it has its own."""
    found = pattern_of(van, part)
    own = found is not None and found.choice("climate") == OWN_CLIMATE
    return key_of(found, "own_skies") if found is not None and own else None


def night_outside(van: Van, part: Part | None) -> Came | None:
    """How cold it is outside at night in the pattern."""
    return _pattern(van, part, "outside")


def shore_night(van: Van, part: Part | None) -> Came | None:
    """The hours on shore power of the pattern."""
    return _pattern(van, part, "shore_hours")


def bank_temperature(van: Van, part: Part | None) -> Came | None:
    """The bank's temperature in the pattern, else the coldest that it gets."""
    found = pattern_of(van, part)
    if found is not None and found["temperature"].known:
        return key_of(found, "temperature")
    return key_of_kind(van, "bank", "coldest")


def day_outside(van: Van, part: Part | None) -> Came | None:
    """How hot it is outside by day: in the pattern, else as stated with the air conditioner."""
    found = pattern_of(van, part)
    if found is not None and found["hottest"].known:
        return key_of(found, "hottest")
    return key_of_kind(van, "cooler", "outside")
