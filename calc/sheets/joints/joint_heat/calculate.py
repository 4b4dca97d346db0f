"""The sum of joint-heat: what a reading says of a joint, now and at full current."""

from dataclasses import dataclass

from calc.electrical import contact
from calc.units.compare import at_least
from calc.units.kinds import POWER, RATIO, RESISTANCE, VOLTAGE
from calc.units.shown import UP, quantity_text


@dataclass(frozen=True)
class Later:
    """One line on a joint whose resistance has grown, as a reader sees it."""

    grown: contact.Grown
    voltage: float

    def __str__(self) -> str:
        one = self.grown
        when = "as it is" if one.factor == 1 else f"with {one.factor} times the resistance"
        text = f"{when}: {quantity_text(one.resistance, RESISTANCE, way=UP)}"
        if one.drop is None or one.heat is None:
            return f"{text}, too much for that current to flow"
        drop = quantity_text(one.drop, VOLTAGE, way=UP, unit="millivolt")
        share = quantity_text(one.drop / self.voltage, RATIO, way=UP)
        return f"{text}, {drop} and {quantity_text(one.heat, POWER, way=UP)}; {share} of the supply is lost here"


@dataclass(frozen=True, kw_only=True)
class JointHeat(contact.Contact):
    """What the reading says of the joint, now and at full current; None where nothing is known.

    `ratio` is over the like joint. `worst_heat` [W] is the larger of now and at full current,
    `worst_rise` [K] likewise, and is what is classed. `small` marks a reading of voltage too
    small to judge by, `light` a temperature taken at too small a load.
    """

    ratio: float | None
    most_drop: float
    warm_metal: float
    hot_metal: float
    worst_heat: float
    zero: float
    per_kelvin: float
    soft: float
    softening: float
    spot: float | None
    spot_rise: float | None
    rise_full: float | None
    rise_low: float | None
    worst_rise: float | None
    priority: int
    severity: str
    military: str | None
    growth: tuple[Later, ...]
    small: bool
    light: bool


def run(
    *, drop: float, current: float, full_current: float, good_drop: float | None, rise: float | None,
    rise_over: str, voltage: float, temperature: float,
) -> JointHeat:
    """Return what a joint that drops `drop` [V] at `current` [A] tells of itself."""
    found = contact.contact(drop=drop, current=current, full_current=full_current, voltage=voltage)
    at_full = None if rise is None else contact.rise_at_full(rise=rise, current=current, full_current=full_current)
    worst_rise = None if rise is None else max(rise, at_full.upper if at_full else 0)
    neta = None if worst_rise is None else contact.severity("NETA", rise_over, worst_rise)
    military = None if worst_rise is None else contact.severity("military", "either", worst_rise)
    spot = None if found.full_drop is None else contact.spot_temperature(drop=found.full_drop, metal=temperature)
    return JointHeat(
        **vars(found),
        ratio=None if good_drop is None else drop / good_drop,
        most_drop=contact.MOST_DROP,
        warm_metal=contact.WARM_METAL,
        hot_metal=contact.HOT_METAL,
        worst_heat=max(found.heat, found.full_heat or 0),
        zero=contact.ABSOLUTE_ZERO,
        per_kelvin=contact.VOLTS_PER_KELVIN,
        soft=contact.SOFTENS,
        softening=contact.softening_drop(temperature),
        spot=spot,
        spot_rise=None if spot is None else spot - temperature,
        rise_full=at_full.upper if at_full else None,
        rise_low=at_full.lower if at_full else None,
        worst_rise=worst_rise,
        priority=neta.priority if neta else 0,
        severity="no temperature given" if rise is None else _named(neta),
        military=None if rise is None else _named(military),
        growth=tuple(
            Later(one, voltage)
            for one in contact.growth(resistance=found.resistance, full_current=full_current, voltage=voltage)
        ),
        small=drop < contact.SMALL_DROP or not at_least(current, contact.SMALL_LOAD * full_current),
        light=rise is not None and at_full is None,
    )


def _named(found: contact.Severity | None) -> str:
    return f"priority {found.priority} ({found.printed}): {found.action}" if found else "below the scale"
