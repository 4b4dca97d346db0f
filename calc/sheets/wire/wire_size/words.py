"""The working of wire-size in words, its remedies, and what its answer says when nothing is wrong."""

# fmt: off
from calc.electrical.run import LoadedRun
from calc.electrical.sizing import Circuit, Decides, SizedCircuit
from calc.judge import Change, Level, Rule
from calc.judge.remedies import Remedy
from calc.sheets.parts.wire import (
    ampacity_steps,
    resistance_steps,
    stated_steps,
    steps_to_warmth,
)
from calc.sheets.wire.wire_size.calculate import WireSize
from calc.units.kinds import CURRENT
from calc.units.shown import DOWN, quantity_text, rounded
from calc.worksheet.declare import Step, placed_steps

FOOT = 0.3048  # m, by definition

DECIDES: dict[str, str] = {
    Decides.DROP: "the drop",
    Decides.HEAT: "the heat",
    Decides.BOTH: "drop and heat alike",
    Decides.FUSE: "a fuse that fits",
}

_FIRST: tuple[Step[Circuit], ...] = (
    Step(of="allowed", formula="limit * voltage", source="abyc-drop", text="The limit you chose, in volts."),
    Step(of="each", formula="current / parallel", when=lambda c: c.parallel > 1, text="If the conductors in parallel are alike, each carries its share."),
    Step(of="resistance_limit", formula="allowed / (2 * length * current)", source="ohm", when=lambda c: c.parallel == 1,
         text="With more resistance than this, at {temperature}, the drop out and back is over the limit."),
    Step(of="resistance_limit", formula="allowed / (2 * length * each)", source="ohm", when=lambda c: c.parallel > 1,
         text="With more resistance than this, at {temperature}, the drop out and back is over the limit."),
)
_NEED: tuple[Step[Circuit], ...] = (
    Step(of="need", formula="margin * current", source="nec-125", when=lambda c: c.parallel == 1,
         text="A fuse that carries a load for hours is rated 1.25 times the load, and the wire must be able to carry that fuse's rating."),
    Step(of="need", formula="margin * each", source="nec-125", when=lambda c: c.parallel > 1,
         text="A fuse that carries a load for hours is rated 1.25 times the load. Each conductor has its own fuse, and must be able to carry its rating."),
)
_CHARGING: Step[Circuit] = Step(
    of="charging", formula="charged * voltage", source="practice", when=lambda c: not c.by_nec,
    text="A 12 V bank of LFP is charged at 14.6 V, and others in proportion. A fuse must be rated for that, and the bundle factor depends on it.",
)


def _chosen(s: SizedCircuit) -> bool:
    return s.chosen is not None


def _fused(s: SizedCircuit) -> bool:
    return s.protection is not None and s.protection.fuse is not None


_FOR_DROP: Step[SizedCircuit] = Step(
    of="for_drop", when=lambda s: s.for_drop is not None, text="The smallest size with no more than {resistance_limit} at {temperature}.",
)
_FOR_HEAT: Step[SizedCircuit] = Step(
    of="for_heat", when=lambda s: s.for_heat is not None, text="The smallest size that can carry {need} by {rule_set}, with {insulation} insulation and the corrections below.",
)
_CHOSEN: tuple[Step[SizedCircuit], ...] = (
    Step(of="conductor", when=_chosen, text="The larger of the two, or the next one on which a standard fuse fits."),
    Step(of="decides", when=_chosen, text="Drop needs {for_drop}, heat needs {for_heat}."),
)
_FUSE: tuple[Step[SizedCircuit], ...] = (
    Step(of="fuse", source="fuse-ratings", when=lambda s: _fused(s) and not s.circuit.by_nec,
         text="The standard rating from {need} to {highest}, in families rated for {charging} d.c., in the order of fuse choice: published and common ones first, then the smallest."),
    Step(of="fuse", source="nec-ratings", when=lambda s: _fused(s) and s.circuit.by_nec, text="The smallest standard rating from {need} to {highest}."),
)
_LOST: tuple[Step[LoadedRun], ...] = (
    Step(of="drop", formula="current * resistance", source="ohm", text="Ohm's law."),
    Step(of="drop_percent", formula="drop / voltage", text="Compared with the system voltage."),
    Step(of="load_voltage", formula="voltage - drop", text="What is left at the far end."),
    Step(of="loss", formula="current * drop", source="ohm", text="This heat is spread along the wire."),
)
_WARM: Step[SizedCircuit] = Step(
    of="warm_drop", formula="drop * (warm - zero) / (temperature - zero)", source="copper-temperature", when=_chosen,
    text="The voltage drop at that temperature.",
)

STEPS = (
    *placed_steps("sized.circuit", *_FIRST),
    *placed_steps("sized", _FOR_DROP),
    *placed_steps("sized.circuit", *_NEED),
    *placed_steps("sized", _FOR_HEAT),
    *placed_steps("sized.circuit", _CHARGING),
    *placed_steps("sized", *_CHOSEN),
    *ampacity_steps("sized.protection.cable", together="together", volts="charging", thin=False),
    *placed_steps("sized", *_FUSE),
    *stated_steps("sized.loaded.laid"),
    *resistance_steps("sized.loaded.laid"),
    *placed_steps("sized.loaded", *_LOST),
    *steps_to_warmth("sized.warmth", "each"),
    *placed_steps("sized", _WARM),
    Step[WireSize](of="remedies", when=lambda w: w.sized.chosen is None, text="Each is checked by the same rules."),
)

FINE = (
    Rule[SizedCircuit](
        id="wire-size.fine-for-a-fuse", level=Level.FINE, when=lambda s: s.decides is Decides.FUSE,
        headline="Use {loaded.laid.run.designation}: no standard fuse fits {larger.name}, which is enough for drop and heat.",
    ),
    Rule[SizedCircuit](
        id="wire-size.fine-for-the-drop", level=Level.FINE, when=lambda s: s.decides is Decides.DROP,
        headline="Use {loaded.laid.run.designation}. Voltage drop decides ({loaded.drop_share}, limit {loaded.limit}); {for_heat.name} is enough for heat.",
    ),
    Rule[SizedCircuit](
        id="wire-size.fine-for-the-heat", level=Level.FINE, when=lambda s: s.decides is Decides.HEAT,
        headline="Use {loaded.laid.run.designation}. Heat decides (fuse {protection.highest} at most); {for_drop.name} is enough for voltage drop.",
    ),
    Rule[SizedCircuit](
        id="wire-size.fine-for-both", level=Level.FINE,
        headline="Use {loaded.laid.run.designation}, for drop and heat alike: {loaded.drop_share} voltage drop, a fuse of {protection.highest} at most.",
    ),
)


def obstacle(found: WireSize) -> str:
    """Return why the thicker of both sizes is not the chosen one, in words; nothing where it is."""
    larger, circuit = found.sized.larger, found.sized.circuit
    if larger is None or larger is found.sized.chosen:
        return ""
    if larger.cable is None:
        return f"{circuit.rule_set.cited} has no value for it"
    lowest = quantity_text(circuit.need, CURRENT, digits=4)
    highest = quantity_text(larger.largest_fuse, CURRENT, digits=4)
    return f"no fuse is made from {lowest} to {highest}"


def remedies(found: WireSize) -> tuple[str, ...]:
    """Return what would let a size do, in words; nothing where one does."""
    if found.sized.chosen:
        return ()
    circuit = found.sized.circuit
    return tuple(_remedy(one, circuit) for one in found.remedies) or (
        "no single change does: shorten the run, split the load and raise the system voltage together",
    )


def _remedy(one: Remedy[Change, SizedCircuit], circuit: Circuit) -> str:
    does = _does(one.comes)
    match dict(one.change.values):
        case {"length": float(length)}:
            metres = rounded(length, 3, DOWN)
            feet = rounded(float(metres) / FOOT, 3, DOWN)
            return f"at most {metres} m ({feet} ft) one way: {does}"
        case {"voltage": float(volts), "current": float(amps)}:
            return f"{volts:g} V instead: the same power is {amps:.3g} A, {does}"
        case {"parallel": float(n)}:
            return f"{n:g} conductors in parallel for plus and {n:g} for minus, each {does}"
        case {"insulation": str(name)}:
            return f"insulation rated {name.replace(' C', ' °C')}: {does}"
        case {"bundled": 1.0}:
            return f"the parallel cables spaced apart: {does}"
        case {"bundled": float(most)}:
            return f"no more than {most:g} loaded conductors together: {does}"
        case {"surroundings": _}:
            return f"a run outside the engine space: {does}"
        case {"current": float(amps)}:
            return f"{circuit.current / amps:.0f} separate runs, each for a load of {amps:.3g} A: {does}"
        case other:
            raise ValueError(f"no words for {other}")


def _does(sized: SizedCircuit) -> str:
    assert sized.chosen and sized.protection
    fuse = sized.protection.fuse
    return f"{sized.chosen.name}{f' with a fuse of {fuse:g} A' if fuse is not None else ''}"
