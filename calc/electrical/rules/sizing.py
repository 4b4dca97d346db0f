"""Judgements on the conductor that a circuit needs, and on a circuit for which there is none."""

# fmt: off
from calc.electrical.easier_circuit import remedies
from calc.electrical.rules.protection import OVER_GROUPED_AMPACITY
from calc.electrical.sizing import SizedCircuit
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most


def _over_bundle(s: SizedCircuit) -> bool:
    return s.protection is not None and OVER_GROUPED_AMPACITY.when(s.protection)


def _warm_over(s: SizedCircuit) -> bool:
    warmth, drop = s.warmth, s.warm_drop
    if warmth is None or drop is None:
        return False
    return warmth.warm > s.circuit.temperature and not at_most(drop, s.circuit.allowed)


def what_lets_a_size_do(sized: SizedCircuit) -> Change | None:
    """Return the first of the changes after which a size does."""
    found = remedies(sized)
    return found[0].change if found else None


NO_SIZE_AT_ALL = Rule[SizedCircuit](
    id="circuit.no-size-for-heat-nor-drop", level=Level.STOP, when=lambda s: s.for_heat is None and s.for_drop is None,
    headline="No size of this series will do: none bears {circuit.need} and none keeps within {circuit.limit} over {circuit.length}.",
    mend=what_lets_a_size_do,
)
NO_SIZE_FOR_HEAT = Rule[SizedCircuit](
    id="circuit.no-size-for-heat", level=Level.STOP, when=lambda s: s.for_heat is None and s.for_drop is not None,
    headline="No size of this series will do: none bears {circuit.need}, the load and a quarter.",
    mend=what_lets_a_size_do,
)
NO_SIZE_FOR_DROP = Rule[SizedCircuit](
    id="circuit.no-size-for-drop", level=Level.STOP, when=lambda s: s.for_drop is None and s.for_heat is not None,
    headline="No size of this series will do: none keeps within {circuit.limit} over {circuit.length}.",
    mend=what_lets_a_size_do,
)
NO_FUSE_FITS = Rule[SizedCircuit](
    id="circuit.no-fuse-fits", level=Level.STOP, when=lambda s: s.larger is not None and s.chosen is None,
    headline="No size of this series will do: {larger.name} suits drop and heat, but no standard fuse fits it or any thicker size.",
    mend=what_lets_a_size_do,
)

NO_RATED_FAMILY = Rule[SizedCircuit](
    id="circuit.no-family-of-its-voltage", level=Level.CAUTION, when=lambda s: not s.circuit.ratings,
    headline="{loaded.laid.run.designation} for drop and heat, but no fuse of our table is rated for {circuit.max_voltage} d.c.",
)
ONE_ALONE_TOO_THIN = Rule[SizedCircuit](
    id="circuit.one-alone-too-thin", level=Level.CAUTION,
    when=lambda s: s.protection is not None and s.circuit.parallel > 1 and not at_most(s.circuit.current, s.protection.highest),
    headline="{loaded.laid.run.designation}, but one alone does not bear {circuit.current}: all rests on an even share.",
)
WARM_DROP_OVER_LIMIT = Rule[SizedCircuit](
    id="circuit.warm-drop-over-limit", level=Level.CAUTION, when=_warm_over, source="practice",
    headline="{loaded.laid.run.designation}, but hot copper may lose {warm_drop}, more than the {circuit.limit} you allow: take the next size.",
    text="At this current the copper may reach {warmth.warm}, hotter than the {circuit.temperature} the drop is worked at.",
    mend=lambda s: Change({"temperature": s.warmth.warm}) if s.warmth else None,
)
SIZE_WITH_BUNDLE = Rule[SizedCircuit](
    id="circuit.size-with-bundle", level=Level.ADVICE, source="33cfr-notes",
    when=lambda s: _over_bundle(s) and s.size_with_bundle is not None,
    text="With the bundle counted so, {size_with_bundle} has room for a fuse.",
)
NEC_JOINS_THICK_ONES = Rule[SizedCircuit](
    id="circuit.nec-joins-thick-ones", level=Level.NOTE, when=lambda s: s.circuit.by_nec and s.circuit.parallel > 1, source="nec-parallel",
    text="Only sizes from 1/0 AWG (53 mm²) up are tried: NEC joins no thinner ones in parallel for a load like this.",
)
