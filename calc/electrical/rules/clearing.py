"""Judgements on the fuse that is to end the shorts of a run."""

# fmt: off
from typing import Protocol

from calc.electrical.clearing import Clears, FaultStudy, fault_study
from calc.electrical.interrupting import InterruptingDuty
from calc.electrical.opening import CONSTANT_I2T_TIME, Fuse
from calc.electrical.withstand import ADIABATIC_LIMIT
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most


class FusedWire(Protocol):
    """A wire behind a fuse, with what one conductor and the whole run can carry for hours."""

    @property
    def fuse(self) -> float | None: ...
    @property
    def duty(self) -> InterruptingDuty | None: ...
    @property
    def least(self) -> float: ...
    @property
    def ampacity(self) -> float | None: ...
    @property
    def run_ampacity(self) -> float: ...
    @property
    def above_ampacity(self) -> bool: ...
    @property
    def above_ceiling(self) -> bool: ...
    @property
    def clears(self) -> Clears: ...


def _ratings_made(wire: FusedWire) -> tuple[float, ...]:
    family = wire.duty.family if wire.duty else None
    return family.ratings if family else ()


def within_ampacity(wire: FusedWire) -> Change | None:
    """Return the largest rating of the fuse's family that one conductor and the load allow."""
    most = wire.ampacity or 0.0
    made = [one for one in _ratings_made(wire) if at_least(one, wire.least) and at_most(one, most)]
    return Change({"fuse": max(made)}) if made else None


def rating_in_time(study: FaultStudy) -> Change | None:
    """Return the largest smaller rating of the fuse's family that ends every short in time."""
    protection = study.protection
    if protection is None:
        return None
    made = [rating for rating in _ratings_made(study) if rating < protection.fuse.rating]
    for rating in reversed(made):
        smaller = fault_study(
            study.short, fuse=Fuse(protection.fuse.family, rating),
            opening_time=protection.opening_time, let_through=protection.let_through,
        )
        if smaller.clears is Clears.IN_TIME and not smaller.arc_left_out:
            return Change({"fuse": rating})
    return None


MAIN_FUSE_ALONE = Rule[FaultStudy](
    id="short.main-fuse-alone", level=Level.STOP, source="abyc-bank", when=lambda s: s.main_fuse_alone,
    headline="Fit a fuse to each battery, class T for lithium: together they pass {short.near.current}, more than this fuse breaks.",
    text="A fuse that cannot break the fault can burst and burn. With a fuse at each battery's post, each fuse has to break the current of one battery only.",
    mend=lambda _: Change({"each_fused": "yes"}),
    covers=frozenset({"fuse.cannot-interrupt", "short.fuse-each-battery", "short.fuse-each-string"}),
)
NEVER = Rule[FaultStudy](
    id="fuse.never-opens", level=Level.STOP, when=lambda s: s.clears is Clears.NEVER, source="ohm",
    headline="Use a smaller fuse: {fuse} can carry the lowest short, {short.lowest.current}, for hours and does not open.",
    text="Use a smaller fuse, larger wire or a shorter run: the loop limits the short too much. Do not install a run that cannot be fused.",
    mend=rating_in_time,
)
TOO_MUCH = Rule[FaultStudy](
    id="fuse.lets-too-much-through", level=Level.STOP, when=lambda s: s.clears is Clears.TOO_MUCH,
    headline="Use a faster fuse or larger wire: this fuse lets {protection.let_through} through, and the wire withstands {short.withstand.let_through}.",
)
TOO_LATE = Rule[FaultStudy](
    id="fuse.opens-too-late", level=Level.STOP, when=lambda s: s.clears is Clears.TOO_LATE,
    headline="Use a smaller fuse or larger wire: the wire withstands {short.lowest.current} for about {short.lowest_start.withstand}, and this fuse may take longer.",
)
ABOVE_CEILING = Rule[FusedWire](
    id="fuse.above-ceiling", level=Level.STOP, when=lambda s: s.above_ceiling, source="33cfr-place",
    headline="Do not use this fuse: {fuse} is more than 1.5 times the {run_ampacity} this run can carry.",
    text="Use a smaller fuse or larger wire: this fuse protects against neither overload nor a weak short. The legal limit is 1.5 times the ampacity.",
    mend=within_ampacity,
)

SHORT_BUT_NO_OVERLOAD = Rule[FaultStudy](
    id="fuse.above-ampacity-in-time", level=Level.CAUTION, when=lambda s: s.above_ampacity and s.clears is Clears.IN_TIME,
    headline="Use {ampacity} or less: a {fuse} fuse opens a short in time, but does not protect this wire against overload.",
    mend=within_ampacity,
)
NO_OVERLOAD = Rule[FusedWire](
    id="fuse.above-ampacity", level=Level.CAUTION, when=lambda s: s.above_ampacity and s.clears is not Clears.IN_TIME,
    headline="Use {ampacity} or less: a {fuse} fuse does not protect this wire against overload.",
    mend=within_ampacity,
)
NOT_CERTAIN = Rule[FaultStudy](
    id="fuse.in-time-not-certain", level=Level.CAUTION, when=lambda s: s.clears is Clears.NOT_CERTAIN and not s.one_device, source="fuse-gates",
    headline="Up to {short.far.current}, at least {short.lowest.current}. Whether the fuse opens before the wire is damaged is {clears}.",
    text="What would settle it: the slow edge of the maker's curve at {short.lowest.current}, and the total let-through at {short.near.current}. Type them in the boxes.",
    mend=rating_in_time,
)
FROM_MEMORY = Rule[FaultStudy](
    id="fuse.in-time-from-memory", level=Level.CAUTION, when=lambda s: s.clears is Clears.FROM_MEMORY and not s.one_device,
    headline="Up to {short.far.current}, at least {short.lowest.current}. Whether the fuse opens before the wire is damaged is {clears}.",
)
NO_CURVE = Rule[FaultStudy](
    id="fuse.no-curve", level=Level.CAUTION, when=lambda s: s.clears is Clears.NO_CURVE and not s.one_device,
    headline="Ask the maker for its curve: none is published for shorts of {short.lowest.current} to {short.far.current}.",
)
ONE_DEVICE = Rule[FaultStudy](
    id="fuse.guards-overload-and-short", level=Level.FINE, source="one-device",
    when=lambda s: s.one_device and s.clears in (Clears.NOT_CERTAIN, Clears.FROM_MEMORY, Clears.NO_CURVE),
    headline="The fuse breaks {short.near.current}, and its {fuse} rating is within the wire's ampacity, {ampacity}.",
)
CURVE_WOULD_PROVE = Rule[FaultStudy](
    id="fuse.curve-would-prove-it", level=Level.NOTE, when=ONE_DEVICE.when, source="one-device",
    text="One fuse protects against overload and short if it is no larger than the ampacity and can break the fault. The maker's curve at {short.lowest.current} would prove how fast.",
)
NO_FUSE = Rule[FaultStudy](
    id="short.no-fuse-named", level=Level.FINE, when=lambda s: s.protection is None,
    headline="A short passes up to {short.far.current} at the far end, and up to {short.near.current} at the source.",
)
NAME_THE_FUSE = Rule[FaultStudy](
    id="short.name-the-fuse", level=Level.ADVICE, when=lambda s: s.protection is None, source="33cfr-place",
    text="No fuse is checked here. The run needs one at its source: enter it and its family to check that it breaks this and opens in time.",
)
ARC_FROM_MEMORY = Rule[FaultStudy](
    id="fuse.arc-from-memory", level=Level.CAUTION, when=lambda s: s.arc_left_out and not s.one_device, source="memory",
    headline="Ask the maker for the let-through at {short.near.current}: it is not proven that the fuse opens in time.",
    text="Ask for the total let-through at {short.near.current}. We neglect the arc where a wire withstands 0.1 s: our estimate.",
)

BY_TYPED = Rule[FaultStudy](
    id="fuse.in-time-as-typed", level=Level.ADVICE, when=lambda s: s.by_typed, source="practice",
    text="This depends on values that you typed: the slow edge of the maker's curve at {short.lowest.current}, or the total clearing I²t at {short.near.current}. A typical or melting value proves nothing.",
)
LARGER_FAULT = Rule[FaultStudy](
    id="fuse.i2t-of-larger-fault", level=Level.ADVICE, when=lambda s: s.i2t_of_larger_fault, source="practice",
    text="The let-through you typed is not used: {short.near.current} is below ten times the rating or takes longer than 0.1 s, and lets more through.",
)
ONLY_LET_THROUGH = Rule[FaultStudy](
    id="fuse.only-let-through-tells", level=Level.ADVICE, source="adiabatic",
    when=lambda s: s.short.near.withstand < CONSTANT_I2T_TIME and s.clears is not Clears.IN_TIME,
    text="Close to the source the wire withstands a short for only {short.near.withstand}. Only the maker's let-through shows whether a fuse is fast enough: it must be below {short.withstand.let_through}.",
)
SLOW_FUSE = Rule[FaultStudy](
    id="fuse.may-take-longer-than-known", level=Level.ADVICE, source="adiabatic",
    when=lambda s: s.clears is Clears.NOT_CERTAIN and s.latest is not None and not at_most(s.latest, ADIABATIC_LIMIT),
    text="It may take {latest} to open the lowest short. What insulation withstands is known for 5 s at most, so a longer time never counts as safe.",
)
BY_DATA_SHEET = Rule[FaultStudy](
    id="fuse.in-time-by-data-sheet", level=Level.ADVICE, when=lambda s: s.by_data_sheet, source="fuse-gates",
    text="In time by makers' data sheets, not by a standard: compare them with your fuse's sheet.",
)
