"""The working of fuse-choice in words, its families and remedies, and what it says when all is well."""

# fmt: off
from calc.electrical.protection import Protection
from calc.judge import Change, Level, Rule
from calc.judge.remedies import Remedy
from calc.sheets.parts.wire import ampacity_steps, steps_to_warmth
from calc.sheets.quick.fuse_choice.calculate import FuseChoice
from calc.worksheet.declare import Step, placed_steps

_ENDS: tuple[Step[Protection], ...] = (
    Step(of="fuse", source="fuse-ratings", when=lambda p: p.fuse is not None,
         text="The smallest standard rating from {lowest} to {highest} among families rated for {voltage} and {fault_current}."),
    Step(of="fuse", source="fuse-ratings", when=lambda p: p.fuse is None and p.window_open,
         text="No standard rating lies from {lowest} to {highest} among families rated for {voltage} and {fault_current}."),
    Step(of="fuse", source="fuse-ratings", when=lambda p: p.fuse is None and not p.window_open,
         text="The load needs {lowest} and the wire bears {highest}: there is nothing between them."),
)
_FAMILIES: Step[Protection] = Step(
    of="families", source="fuse-ratings", when=lambda p: p.fuse is not None,
    text="Rated for {voltage} d.c. or more, able to break {fault_current}, and made in this rating. Those seen in a text come first, then the least oversized.",
)
STEPS = (
    Step(of="lowest", formula="margin * current", source="nec-125", text="A fuse that carries its full rating for hours ages and opens by itself."),
    *ampacity_steps("protection.cable", together="bundled", volts="voltage"),
    *placed_steps("protection", *_ENDS),
    *steps_to_warmth("protection.warmth", "current"),
    *placed_steps("protection", _FAMILIES),
    Step[FuseChoice](of="remedies", when=lambda c: c.protection.fuse is None, text="Each worked by running the same rules again."),
)

FINE = Rule[Protection](
    id="fuse-choice.fine", level=Level.FINE,
    headline="A {fuse} fuse carries the load and protects the wire.",
)
ALSO = Rule[Protection](
    id="fuse-choice.also", level=Level.NOTE, when=lambda p: bool(p.next_larger), source="fuse-ratings",
    text="Also within the window: {next_larger}.",
)

ONE_FUSE_ONE_WIRE = Rule[FuseChoice](
    id="fuse-choice.one-fuse-one-wire", level=Level.NOTE, source="nec-parallel",
    text="This is one fuse on one wire. Of wires in parallel ask for one with its share of the load, count all of them as together, and fuse each.",
)


def families(found: FuseChoice) -> tuple[str, ...]:
    """Return the families that make the fuse, best first, as they are asked for in a shop."""
    voltage = found.protection.max_voltage
    return tuple(family.named_for(voltage) for family in found.protection.families)


def also(found: FuseChoice) -> tuple[str, ...]:
    """Return the next larger ratings that fit, each with the families that make it."""
    p = found.protection
    makers = {
        rating: " or ".join(one.named_for(p.max_voltage) for one in p.suitable if rating in one.ratings)
        for rating in p.next_larger
    }
    return tuple(f"{rating:g} A ({names})" for rating, names in makers.items())


def remedies(found: FuseChoice) -> tuple[str, ...]:
    """Return what would let a fuse fit, in words; nothing where one does."""
    if found.protection.fuse is not None:
        return ()
    if not found.protection.suitable:
        return ("a source with less fault current, or a fuse whose data sheet gives the d.c. voltage and interrupting rating asked for",)
    return tuple(_remedy(one, found.protection.current) for one in found.remedies) or (
        "no single change: take thicker wire, cooler surroundings and several circuits together",
    )


def _remedy(one: Remedy[Change, Protection], current: float) -> str:
    match dict(one.change.values):
        case {"conductor": str(name)}:
            says = f"thicker wire: {name}, with"
        case {"insulation": str(name)}:
            says = f"insulation rated {name.replace(' C', ' °C')}, with"
        case {"bundled": float(most)}:
            says = f"no more than {most:g} loaded conductors together, with"
        case {"current": float(part)}:
            says = f"split the load into {current / part:.0f} circuits of {part:.3g} A, each on this wire with"
        case other:
            raise ValueError(f"no words for {other}")
    return f"{says} a fuse of {one.comes.fuse:g} A"
