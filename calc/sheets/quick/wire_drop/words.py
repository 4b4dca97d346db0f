"""The working of wire-drop in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.electrical.protection import Protection
from calc.electrical.run import LoadedRun, RunResult
from calc.electrical.wire_drop import WireDrop
from calc.judge import Level, Rule
from calc.sheets.parts.wire import (
    ampacity_steps,
    resistance_steps,
    stated_steps,
    steps_to_warmth,
)
from calc.worksheet.declare import Step, placed_steps

_THIN_OR_MADE: tuple[Step[RunResult], ...] = (
    Step(of="stated", source="copper-iacs", when=lambda r: r.computed and not r.run.from_maker,
         text="{conductor}, {finish} copper at {reference}: smaller than the published table begins, so calculated from pure copper, plus 2 % because strands run in a helix."),
    Step(of="stated", formula="maker_resistance", when=lambda r: r.run.from_maker, text="As the maker states it at {reference}."),
)
_LOST: tuple[Step[LoadedRun], ...] = (
    Step(of="drop", formula="current * resistance", when=lambda r: r.flows, source="ohm", text="Ohm's law."),
    Step(of="drop_percent", formula="drop / voltage", when=lambda r: r.flows, text="Compared with the system voltage."),
    Step(of="loss", formula="current * drop", when=lambda r: r.flows, source="ohm", text="This heat is spread along the wire."),
    Step(of="load_voltage", formula="voltage - drop", when=lambda r: r.flows, text="What is left at the far end."),
    Step(of="feeds", formula="voltage / resistance", when=lambda r: not r.flows, source="ohm",
         text="With the far end shorted no more than this can flow, so no drop is given for more."),
)


_FUSED: tuple[Step[Protection], ...] = (
    Step(of="fuse", source="fuse-ratings", when=lambda p: p.fuse is not None, text="The standard rating from {lowest} to {highest}, in families rated for {charging} d.c., in the order of fuse choice: published and common ones first, then the smallest. For the family, see fuse choice."),
)


def _parallel(d: WireDrop) -> bool:
    return d.loaded.laid.run.parallel > 1


STEPS = (
    *stated_steps("loaded.laid"),
    *placed_steps("loaded.laid", *_THIN_OR_MADE),
    *resistance_steps("loaded.laid"),
    *placed_steps("loaded", *_LOST),
    Step[WireDrop](of="each", formula="current / parallel", when=_parallel, text="If the conductors in parallel are alike, each carries its share."),
    Step[WireDrop](of="lowest", formula="margin * each", source="nec-125", text="A fuse that carries a load for hours is rated 1.25 times the load, and the wire must be able to carry that rating."),
    Step[WireDrop](of="charging", source="practice", text="A 12 V bank of LFP is charged at 14.6 V, and others in proportion."),
    *ampacity_steps("protection.cable", together="together", volts="charging", law_only=True),
    *placed_steps("protection", *_FUSED),
    *steps_to_warmth("protection.warmth", "each"),
    Step[WireDrop](of="warm_drop", formula="drop * (warm - zero) / (temperature - zero)", source="copper-temperature", when=lambda d: d.warm_drop is not None,
                   text="The voltage drop at that temperature."),
    Step[WireDrop](of="allowed", formula="limit * voltage", source="abyc-drop", text="The limit you chose, in volts."),
    Step[WireDrop](of="smallest_conductor", text="The smallest size of the same series within the limit at this current, length and temperature. Sizes below 18 AWG and 0.75 mm² are left out, unless yours is one: they are for signals."),
    Step[WireDrop](of="longest_run", formula="allowed / (2 * current * per_length)", source="ohm", when=lambda d: not _parallel(d), text="The run at which this conductor meets the limit exactly."),
    Step[WireDrop](of="longest_run", formula="allowed * parallel / (2 * current * per_length)", source="ohm", when=_parallel,
                   text="The run at which these conductors meet the limit exactly."),
)

FINE = Rule[LoadedRun](
    id="wire-drop.fine", level=Level.FINE,
    headline="Voltage drop {drop} ({drop_share}), within your {limit} limit, and the wire can carry the load.",
)
