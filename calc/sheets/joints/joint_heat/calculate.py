"""joint-heat from its fields: the part between the probes, and the book's function on it."""

from dataclasses import dataclass

from calc.electrical.contact import Grown, MeasuredJoint, RiseOver, Severity, measured_joint
from calc.electrical.sound_parts import Part, SoundPart, sound_cable, sound_fuse, sound_joint
from calc.units.kinds import POWER, RATIO, RESISTANCE, VOLTAGE
from calc.units.shown import quantity_text


def calculate(
    *,
    probed: Part,
    fuse_rating: float,
    breaker_rating: float,
    conductor: str,
    length: float,
    temperature: float,
    voltage: float,
    rise_over: RiseOver,
    rise: float | None,
    good_drop: float | None,
    full_current: float,
    current: float,
    drop: float,
) -> MeasuredJoint:
    """Return what the part that is `probed` does at `full_current`, beside a sound one."""
    return measured_joint(
        sound=_sound(probed, fuse_rating, breaker_rating, conductor, length, temperature),
        drop=drop,
        current=current,
        full_current=full_current,
        good_drop=good_drop,
        rise=rise,
        rise_over=rise_over,
        voltage=voltage,
        temperature=temperature,
    )


def _sound(
    part: Part, fuse: float, breaker: float, conductor: str, length: float, temperature: float
) -> SoundPart:
    if part is Part.FUSE:
        return sound_fuse(part, fuse)
    if part is Part.BREAKER:
        return sound_fuse(part, breaker)
    if part is Part.CABLE:
        return sound_cable(conductor=conductor, length=length, temperature=temperature)
    return sound_joint(part)


@dataclass(frozen=True)
class Later:
    """One line on a joint whose resistance has grown, as a reader sees it."""

    grown: Grown
    voltage: float

    def __str__(self) -> str:
        one = self.grown
        when = "as it is" if one.factor == 1 else f"with {one.factor} times the resistance"
        text = f"{when}: {quantity_text(one.resistance, RESISTANCE)}"
        if one.drop is None or one.heat is None:
            return f"{text}, too much for that current to flow"
        drop = quantity_text(one.drop, VOLTAGE, unit="millivolt")
        heat = quantity_text(one.heat, POWER)
        share = quantity_text(one.drop / self.voltage, RATIO)
        return f"{text}, {drop} and {heat}; {share} of the supply is lost here"


def growth(joint: MeasuredJoint) -> tuple[Later, ...] | None:
    """Return what a loose joint does next, a line for each growth; None of what is no joint."""
    if joint.sound.warm_by_nature:
        return None
    return tuple(Later(one, joint.reading.voltage) for one in joint.growth)


def severity(joint: MeasuredJoint) -> str:
    """Return the class of the temperature in words."""
    return _named(joint.warmth.severity) if joint.warmth else "no temperature given"


def military(joint: MeasuredJoint) -> str | None:
    """Return the class on the military scale in words, None without a temperature."""
    return _named(joint.warmth.military) if joint.warmth else None


def _named(found: Severity | None) -> str:
    return str(found) if found else "below the scale"
