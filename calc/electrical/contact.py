"""A joint under current: its resistance, its heat, and how hot its contact spots run.

Two pieces of metal that are pressed together touch at few small spots. The current crowds through
them, so a joint has a resistance and warms; oxide and slackening leave fewer spots.
"""

from dataclasses import dataclass
from functools import cache
from math import pi, sqrt
from typing import Annotated

from calc.electrical.cable import HOT_COPPER, USUAL_INSULATION
from calc.electrical.sound_parts import Part, SoundPart
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.constants import ABSOLUTE_ZERO
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Celsius,
    Kelvins,
    Number,
    Ohms,
    Share,
    Tag,
    Volts,
    VoltsPerKelvin,
    Watts,
)

# SAE, as quoted in a workshop manual, for a connection that carries high current
MOST_DROP: Annotated[Volts, Tag("most drop of one connection")] = 0.1
# SAE, as quoted in the same manual, for a switch
SWITCH_DROP: Annotated[Volts, Tag("most drop of a switch")] = 0.3
# Of loose connections that glowed, the least heat: NBSIR 76-1011, abstract
GLOWS_LEAST: Annotated[Watts, Tag("least heat of a glowing connection")] = 5.0
# Times the resistance may grow before the drop is too much: common practice, no source
GROWTH_LEAST: Annotated[Number, Tag("least growth left to a joint's resistance")] = 2.0
# Where a usual meter's last digit shows: common practice, no source
SMALL_DROP: Annotated[Volts, Tag("drop too small to judge by")] = 1e-3
# Of the full current, for a reading of voltage: common practice, no source
SMALL_LOAD: Annotated[Share, Tag("least load for a reading of voltage")] = 0.2
# Of the full current, for a reading of temperature: a thermographer's check list
THERMAL_LOAD: Annotated[Share, Tag("least load for a reading of temperature")] = 0.4
# Times the lowest of like connections: ANSI/NETA as restated, 50 % above it
LIKE_MOST: Annotated[Number, Tag("most of a joint's drop over its like")] = 1.5
# I1/I2 = (rise1/rise2)^0.61: IEC 61439-1, 10.10.2.3.1, as quoted
RISE_ROOT: Annotated[Number, Tag("exponent of current with temperature rise")] = 0.61
GROWTHS = (1, 2, 4, 8)  # times the resistance: what a loose joint does next

# Contact spots of copper, 463 K: with the relation (Holm)
SOFTENS: Annotated[Celsius, Tag("copper softens")] = 190.0
# 1356 K: with the relation (Holm)
MELTS: Annotated[Celsius, Tag("copper melts")] = 1083.0
BOLTZMANN, CHARGE = 1.380649e-23, 1.602176634e-19  # J/K and C, exact by the SI of 2019
# Twice the root of the Lorenz number L = pi²/3 (k/e)² of metals
VOLTS_PER_KELVIN: VoltsPerKelvin = 2 * pi / sqrt(3) * BOLTZMANN / CHARGE


class RiseOver(Enumeration):
    """What the temperature of a joint is compared with."""

    LIKE_JOINT = "like-joint"
    AIR = "air"


class Scale(Enumeration):
    """A scale that classes temperature rises."""

    NETA = "NETA"
    MILITARY = "military"


def spot_temperature(*, drop: float, metal: float) -> float | None:
    """Return the highest temperature [°C] within a contact that drops `drop` [V].

    T² = T0² + U²/(4 L) in kelvin, Kohlrausch's relation (Holm, Electric Contacts): it holds for
    spots of any size or number, since all of them lie between the same two voltages. `metal` [°C]
    is the metal on both sides. A drop that is partly lost in the metal gives too high a figure,
    which is the safe side. None above the melting point of copper, where it ends.
    """
    hottest = ABSOLUTE_ZERO + sqrt((metal - ABSOLUTE_ZERO) ** 2 + (drop / VOLTS_PER_KELVIN) ** 2)
    return hottest if at_most(hottest, MELTS) else None


def softening_drop(metal: float) -> float:
    """Return the drop [V] at which spots of copper soften, `metal` [°C] being on both sides.

    The same relation solved for the voltage; 0.112 V from cold metal. `metal` is at most SOFTENS.
    """
    warm, soft = metal - ABSOLUTE_ZERO, SOFTENS - ABSOLUTE_ZERO
    return VOLTS_PER_KELVIN * sqrt(soft**2 - warm**2)


@dataclass(frozen=True, kw_only=True)
class Grown:
    """A joint whose resistance has grown by `factor`, at full current: drop [V] and heat [W].

    They are None where the supply can no longer push the full current through it.
    """

    factor: int
    resistance: Ohms
    drop: Volts | None
    heat: Watts | None


def growth(*, resistance: float, full_current: float, voltage: float) -> tuple[Grown, ...]:
    """Return the joint as it is and with two, four and eight times its `resistance` [ohm].

    Heat feeds oxide and creep, which feed the resistance: what comes next is known, when is not.
    """
    found = []
    for factor in GROWTHS:
        grown = factor * resistance
        drop = grown * full_current
        flows = drop < voltage
        heat = grown * full_current**2
        found.append(
            Grown(
                factor=factor,
                resistance=grown,
                drop=drop if flows else None,
                heat=heat if flows else None,
            )
        )
    return tuple(found)


@dataclass(frozen=True, kw_only=True)
class Rise:
    """A temperature rise [K] at full load: `upper` by the square, `lower` by IEC 61439-1."""

    upper: Kelvins
    lower: Kelvins


def rise_at_full(*, rise: float, current: float, full_current: float) -> Rise | None:
    """Return a `rise` [K] measured at `current` [A] taken to `full_current` [A].

    By the square of the current, as heat goes: cooling improves as things get hotter, so this is
    the upper figure above the measured current. IEC 61439-1 has the power 1/0.61, and that only
    for corrections of 5 K. None below 40 % of full load, where no such reading is taken.
    """
    if not at_least(current, THERMAL_LOAD * full_current):
        return None
    share = full_current / current
    return Rise(upper=rise * share**2, lower=rise * share ** (1 / RISE_ROOT))


@dataclass(frozen=True)
class Severity:
    """A class of temperature rise: `priority` 1 is the worst; `printed` is its range in print."""

    priority: int
    printed: str
    action: str

    def __str__(self) -> str:
        return f"priority {self.priority} ({self.printed}): {self.action}"


@cache
def _classes(scale: Scale, over: str) -> tuple[tuple[float, bool, Severity], ...]:
    rows = [r for r in table("thermal_severity").rows if (r["scale"], r["over"]) == (scale, over)]
    return tuple(
        (
            float(row["from_k"]),
            row["begins"] == "at",
            Severity(int(row["priority"]), row["printed"], row["action"]),
        )
        for row in rows
    )


def severity(scale: Scale, over: RiseOver, rise: float) -> Severity | None:
    """Return the class of a `rise` [K] `over` something on a scale, or None below its lowest.

    The military scale makes no difference what it is over. A rise between two printed classes
    takes the more severe. Raises NotCovered for a name that is not in an enumeration.
    """
    scale, over = Scale(scale), RiseOver(over)
    column = "either" if scale is Scale.MILITARY else over.replace("-", " ")
    for least, itself, found in _classes(scale, column):
        if at_least(rise, least) if itself else not at_most(rise, least):
            return found
    return None


@dataclass(frozen=True, kw_only=True)
class Reading:
    """What was read across a joint: `drop` [V] at `current` [A].

    `full_current` [A] is the most it is to carry, `voltage` [V] the supply's, `temperature` [°C]
    that of the metal round it, `good_drop` [V] that of a like joint at the same current.
    """

    drop: Volts
    current: Amperes
    full_current: Amperes
    voltage: Volts
    temperature: Celsius
    good_drop: Volts | None

    @property
    def small(self) -> bool:
        """Whether the load is too small to judge by."""
        return not at_least(self.current, SMALL_LOAD * self.full_current)

    @property
    def highest(self) -> Ohms:
        """The resistance if the meter's last digit hid as much as it can."""
        return max(self.drop, SMALL_DROP) / self.current


@dataclass(frozen=True, kw_only=True)
class FullLoad:
    """A joint at full current: its drop, that as a share of the supply, its heat.

    `spot` is the temperature of its hottest contact spot, None where copper would have melted.
    """

    drop: Volts
    drop_share: Share
    heat: Watts
    spot: Celsius | None
    spot_rise: Kelvins | None


@dataclass(frozen=True, kw_only=True)
class Warmth:
    """How much warmer than something a joint is: measured, and at full current.

    `at_full` is None where the load was too small to tell. `worst`, the largest, is classed; the
    classes are None below the lowest of their scale.
    """

    rise: Kelvins
    rise_over: RiseOver
    at_full: Rise | None
    worst: Kelvins
    severity: Severity | None
    military: Severity | None

    @property
    def priority(self) -> int:
        """The class by number, 1 being the worst; 0 below the scale."""
        return self.severity.priority if self.severity else 0

    @property
    def light(self) -> bool:
        """Whether the load was too small for a temperature."""
        return self.at_full is None


@dataclass(frozen=True, kw_only=True)
class MeasuredJoint:
    """What a reading says of a joint or other part; None where there is no real figure.

    `sound` is what such a part has when it is sound. `full` is None where the supply can't push
    the full current through this joint; then `max_current` is all it could. `softening` is the
    drop at which its contact spots soften.
    """

    reading: Reading
    sound: SoundPart
    resistance: Ohms
    heat: Watts
    max_current: Amperes
    full: FullLoad | None
    softening: Volts
    growth: tuple[Grown, ...]
    warmth: Warmth | None

    @property
    def contact(self) -> bool:
        """Whether it is a contact alone, whose whole drop lies in a few small spots."""
        return not self.sound.warm_by_nature and self.sound.part is not Part.SWITCH

    @property
    def spot(self) -> Celsius | None:
        """How hot the contact spots run at full current; None where the drop is not all there."""
        return self.full.spot if self.contact and self.full else None

    @property
    def spot_rise(self) -> Kelvins | None:
        """The same above the metal round it."""
        return self.full.spot_rise if self.contact and self.full else None

    @property
    def most_drop(self) -> Volts:
        """The most it may lose.

        A connection 0.1 V and a switch 0.3 V (SAE, as quoted); other parts twice what a sound one
        loses: a fuse or breaker at its rating, a cable at the larger of the two currents.
        """
        if self.sound.part is Part.SWITCH:
            return SWITCH_DROP
        if not self.sound.warm_by_nature:
            return MOST_DROP
        read = self.reading
        return self.sound.most * (self.sound.rating or max(read.current, read.full_current))

    @property
    def beyond_range(self) -> bool:
        """Whether it has more resistance than a sound part of its kind."""
        return not at_most(self.resistance, self.sound.high)

    @property
    def beyond_any_like(self) -> bool:
        """Whether it has so much that a like part would only show that both are bad."""
        return not at_most(self.resistance, self.sound.most)

    @property
    def cleared(self) -> bool:
        """Whether a like part, itself no worse than such parts may be, reads about as much."""
        read, ratio = self.reading, self.ratio
        if read.good_drop is None or ratio is None:
            return False
        return at_most(ratio, LIKE_MOST) and at_most(read.good_drop / read.current, self.sound.most)

    @property
    def ratio(self) -> Number | None:
        """The drop over that of the like joint."""
        good = self.reading.good_drop
        return None if good is None else self.reading.drop / good

    @property
    def worst_heat(self) -> Watts:
        """The larger of the heat now and at full current."""
        return max(self.heat, self.full.heat if self.full else 0)

    @property
    def warm_metal(self) -> Celsius:
        """The most that lugs and holders are commonly made for."""
        return HOT_COPPER

    @property
    def hot_metal(self) -> Celsius:
        """The most that good cable is made for."""
        return USUAL_INSULATION

    @property
    def growth_left(self) -> Number | None:
        """How often the resistance may yet grow before the joint drops too much at full current.

        None where it drops too much already, or cannot pass that current.
        """
        if self.full is None:
            return None
        full_drop = self.resistance * self.reading.full_current
        return self.most_drop / full_drop if at_most(full_drop, self.most_drop) else None


def most_passing(*, sound: SoundPart, full_current: float, like: float | None = None) -> float:
    """Return the resistance [ohm] below which joint heat has nothing against a contact.

    It is to carry `full_current` [A]; `like` [ohm] is a like one's. The least of the sound range,
    or half as much again as the like one, of what leaves its resistance room to double, and of what
    stays under 5 W.
    """
    cleared = sound.high if like is None else LIKE_MOST * like
    room = MOST_DROP / GROWTH_LEAST / full_current
    return min(sound.most, cleared, room, GLOWS_LEAST / full_current**2)


def measured_joint(
    *,
    sound: SoundPart,
    drop: float,
    current: float,
    full_current: float,
    good_drop: float | None,
    rise: float | None,
    rise_over: RiseOver,
    voltage: float,
    temperature: float,
) -> MeasuredJoint:
    """Return what a part that drops `drop` [V] at `current` [A] does at `full_current` [A].

    `sound` is what such a part has when it is sound. R = U/I; heat = U I; at another current heat
    goes with its square. `good_drop` [V] is that of a like joint, `rise` [K] how much warmer the
    joint is than `rise_over`, both None if unknown; `voltage` [V] the supply's, `temperature` [°C]
    that of the metal round it, up to SOFTENS. Raises NotCovered for a name that is not in an
    enumeration.
    """
    resistance = drop / current
    rise_over = RiseOver(rise_over)
    full = None
    if resistance * full_current < voltage:
        full = _at_full(resistance, full_current, voltage, temperature)
    warmth = None
    if rise is not None:
        warmth = _warmth(rise, rise_over, current, full_current)
    return MeasuredJoint(
        reading=Reading(
            drop=drop,
            current=current,
            full_current=full_current,
            voltage=voltage,
            temperature=temperature,
            good_drop=good_drop,
        ),
        sound=sound,
        resistance=resistance,
        heat=drop * current,
        max_current=voltage / resistance,
        full=full,
        softening=softening_drop(temperature),
        growth=growth(resistance=resistance, full_current=full_current, voltage=voltage),
        warmth=warmth,
    )


def _at_full(resistance: float, current: float, voltage: float, metal: float) -> FullLoad:
    drop = resistance * current
    spot = spot_temperature(drop=drop, metal=metal)
    return FullLoad(
        drop=drop,
        drop_share=drop / voltage,
        heat=resistance * current**2,
        spot=spot,
        spot_rise=None if spot is None else spot - metal,
    )


def _warmth(rise: float, over: RiseOver, current: float, full_current: float) -> Warmth:
    at_full = rise_at_full(rise=rise, current=current, full_current=full_current)
    worst = max(rise, at_full.upper if at_full else 0)
    return Warmth(
        rise=rise,
        rise_over=over,
        at_full=at_full,
        worst=worst,
        severity=severity(Scale.NETA, over, worst),
        military=severity(Scale.MILITARY, over, worst),
    )
