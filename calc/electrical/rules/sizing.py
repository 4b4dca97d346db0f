"""Judgements on the conductor that a circuit needs, and on a circuit for which there is none."""

# fmt: off
from typing import Protocol

from calc.electrical.easier_circuit import remedies
from calc.electrical.protection import Protection, Warmth
from calc.electrical.run import LoadedRun
from calc.electrical.sizing import SizedCircuit
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most

AFTER_HARDLY_SOLD = "2 AWG"  # the size above the one that shops hardly keep


class HasWarmDrop(Protocol):
    """A run at work, with how warm its copper gets, and the drop with the copper as warm as that."""

    @property
    def loaded(self) -> LoadedRun | None: ...
    @property
    def warmth(self) -> Warmth | None: ...
    @property
    def warm_drop(self) -> float | None: ...


class HasSharedRun(Protocol):
    """A run at work, of like conductors each with its own fuse."""

    @property
    def loaded(self) -> LoadedRun | None: ...
    @property
    def protection(self) -> Protection | None: ...


def _warm_over(s: HasWarmDrop) -> bool:
    run, warmth, drop = s.loaded, s.warmth, s.warm_drop
    if run is None or warmth is None or drop is None:
        return False
    return warmth.warm > run.laid.run.temperature and not at_most(drop, run.allowed)


def _one_too_thin(s: HasSharedRun) -> bool:
    """NEC joins so thin conductors only where each alone carries the whole load."""
    run, on = s.loaded, s.protection
    if run is None or on is None or not run.laid.too_thin_to_join:
        return False
    return not at_most(run.current, on.highest)


def what_lets_a_size_do(sized: SizedCircuit) -> Change | None:
    """Return the first of the changes after which a size does."""
    found = remedies(sized)
    return found[0].change if found else None


NO_SIZE_AT_ALL = Rule[SizedCircuit](
    id="circuit.no-size-for-heat-nor-drop", level=Level.STOP, when=lambda s: s.for_heat is None and s.for_drop is None,
    headline="No size will do: none can carry {circuit.need}, and none is within {circuit.limit} over {circuit.length}.",
    mend=what_lets_a_size_do,
)
NO_SIZE_FOR_HEAT = Rule[SizedCircuit](
    id="circuit.no-size-for-heat", level=Level.STOP, when=lambda s: s.for_heat is None and s.for_drop is not None,
    headline="No size of this series will do: none can carry {circuit.need}, 1.25 times the load.",
    mend=what_lets_a_size_do,
)
NO_SIZE_FOR_DROP = Rule[SizedCircuit](
    id="circuit.no-size-for-drop", level=Level.STOP, when=lambda s: s.for_drop is None and s.for_heat is not None,
    headline="No size of this series will do: none is within {circuit.limit} over {circuit.length}.",
    mend=what_lets_a_size_do,
)
NO_FUSE_FITS = Rule[SizedCircuit](
    id="circuit.no-fuse-fits", level=Level.STOP, when=lambda s: s.larger is not None and s.chosen is None,
    headline="No size will do: {larger.name} suits drop and heat, but no standard fuse fits it or a larger one.",
    mend=what_lets_a_size_do,
)

NO_RATED_FAMILY = Rule[SizedCircuit](
    id="circuit.no-family-of-its-voltage", level=Level.CAUTION, when=lambda s: not s.circuit.ratings,
    headline="{loaded.laid.run.designation} suits drop and heat, but no fuse in our table is rated for {circuit.max_voltage} d.c.",
)
WARM_DROP_OVER_LIMIT = Rule[HasWarmDrop](
    id="circuit.warm-drop-over-limit", level=Level.CAUTION, when=_warm_over, source="practice",
    headline="Take the next size: warm copper may lose {warm_drop}, more than the {loaded.limit} you allow.",
    text="At this load the copper may reach {warmth.warm}, hotter than the {loaded.laid.run.temperature} used for the drop.",
    mend=lambda s: Change({"temperature": s.warmth.warm}) if s.warmth else None,
)
ONE_ALONE_TOO_THIN = Rule[HasSharedRun](
    id="circuit.one-alone-too-thin", level=Level.CAUTION, when=_one_too_thin, source="nec-parallel",
    headline="Fuse each conductor, or use one larger: one alone cannot carry {loaded.current}.",
)
HARDLY_SOLD = Rule[SizedCircuit](
    id="circuit.size-hardly-sold", level=Level.NOTE, source="practice",
    when=lambda s: s.chosen is not None and s.chosen.name == AFTER_HARDLY_SOLD and not s.circuit.by_nec,
    text="3 AWG is not tried: it is hard to buy as flexible cable.",
)
NEC_JOINS_THICK_ONES = Rule[SizedCircuit](
    id="circuit.nec-joins-thick-ones", level=Level.NOTE, when=lambda s: s.circuit.by_nec and s.circuit.parallel > 1, source="nec-parallel",
    text="Only sizes from 1/0 AWG (53 mm²) up are tried: NEC does not allow smaller ones in parallel for a load like this.",
)
