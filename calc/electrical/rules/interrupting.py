"""Judgements on a fuse at its place: its voltage rating, and what it must interrupt."""

# fmt: off
from calc.electrical.fuse_order import suitable
from calc.electrical.interrupting import InterruptingDuty
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least


def family_that_suits(duty: InterruptingDuty) -> Change | None:
    """Return a family that is rated for this place and made in this rating, seen in text if any."""
    suits = suitable(duty.voltage, duty.fault_current)
    made = [family for family in suits if duty.fuse.rating in family.ratings]
    return Change({"fuse_family": made[0].name}) if made else None


def family_without_doubt(duty: InterruptingDuty) -> Change | None:
    """Return a family that suits as it is usually made, its ratings seen in a text."""
    for family in suitable(duty.voltage, duty.fault_current):
        memory = family.from_memory(duty.voltage, duty.fault_current)
        sure = not memory and family.marked_higher(duty.voltage) is None
        if sure and duty.fuse.rating in family.ratings:
            return Change({"fuse_family": family.name})
    return None


def next_rating_below(duty: InterruptingDuty) -> Change | None:
    """Return the largest rating below that the family is made in, and that carries the load."""
    made = duty.family.ratings if duty.family else ()
    below = [rating for rating in made if at_least(rating, duty.least) and rating < duty.fuse.rating]
    return Change({"fuse": max(below)}) if below else None


VOLTAGE_TOO_LOW = Rule[InterruptingDuty](
    id="fuse.voltage-rating-too-low", level=Level.STOP, when=lambda d: d.voltage_too_low, source="fuse-ratings",
    headline="Do not use this fuse: its d.c. voltage rating is below {voltage}.",
    text="Above its d.c. voltage rating a fuse can hold an arc instead of opening. A 58 V family is not for a 48 V bank that charges at 58.4 V.",
    mend=family_that_suits,
)
CANNOT_INTERRUPT = Rule[InterruptingDuty](
    id="fuse.cannot-interrupt", level=Level.STOP, when=lambda d: d.cannot_interrupt, source="fuse-ratings",
    headline="Do not use this fuse: a short may pass {fault_current}, and its family breaks {interrupting_rating}.",
    text="A fuse that cannot break the fault can burst and burn. Take a family that breaks {fault_current} at {voltage}.",
    mend=family_that_suits,
)
NOT_MADE_FOR_IT = Rule[InterruptingDuty](
    id="fuse.not-made-for-such-a-fault", level=Level.STOP, when=lambda d: d.beyond_weakest, source="fuse-weakest",
    headline="Do not use this fuse: a short may pass {fault_current}, and such a cartridge may break only {weakest}.",
    text="A fuse that cannot break the fault can burst and burn. Such a cartridge must break only {weakest} of a.c.; nothing higher is published for d.c. Use a stronger family.",
    mend=family_that_suits, covers=frozenset({"fuse.ratings-unknown"}),
)
MARKED_HIGHER = Rule[InterruptingDuty](
    id="fuse.marked-higher", level=Level.CAUTION, when=lambda d: d.marked_voltage is not None, source="fuse-ratings",
    headline="Look for {marked_voltage} or more on the fuse: the common version is made for 32 V, too little at {voltage}.",
    text="Look for {marked_voltage} or more on the fuse: blades and strips are made for 32 V unless marked higher, and above it can hold an arc instead of opening.",
)
UNKNOWN = Rule[InterruptingDuty](
    id="fuse.ratings-unknown", level=Level.CAUTION, when=lambda d: d.unknown, source="fuse-ratings",
    headline="What this fuse breaks at {voltage} d.c. is not known to us.",
    text="What this fuse breaks at {voltage} d.c. is not known to us. It must break {fault_current}: read the fuse and its data sheet.",
    mend=family_without_doubt,
)
FROM_MEMORY = Rule[InterruptingDuty](
    id="fuse.ratings-from-memory", level=Level.CAUTION, when=lambda d: d.from_memory, source="memory",
    headline="What this family breaks is from memory.",
    text="What this family breaks is from memory: read the fuse.",
    mend=family_without_doubt,
)
NO_STANDARD_RATING = Rule[InterruptingDuty](
    id="fuse.no-standard-rating", level=Level.CAUTION, when=lambda d: d.no_standard_rating, source="fuse-ratings",
    headline="{fuse.rating} is not a standard rating of this family.",
    text="{fuse.rating} is not among the standard ratings that we know of this family.",
    mend=next_rating_below,
)
TIGHT = Rule[InterruptingDuty](
    id="fuse.interrupting-rating-tight", level=Level.CAUTION, when=lambda d: d.tight, source="practice",
    headline="A short of {fault_current} is within a tenth of what the family breaks.",
    text="{fault_current} is within a tenth of what must break it. No source is known that precisely, and a charger adds its own current: use the class above.",
    mend=family_that_suits,
)
RULES = (VOLTAGE_TOO_LOW, CANNOT_INTERRUPT, NOT_MADE_FOR_IT, MARKED_HIGHER, UNKNOWN, FROM_MEMORY, NO_STANDARD_RATING, TIGHT)
