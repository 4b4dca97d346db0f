"""find-fault in words: the working of what a step needs, and where it leads."""

from collections.abc import Callable
from functools import cache

# fmt: off
from calc.faults import graph
from calc.faults.graph import End, Reads
from calc.faults.graph import Step as SearchStep
from calc.faults.search import FaultSearch
from calc.faults.walk import limits, possible
from calc.faults.words import amount, answered, meter, setting
from calc.sheets import IDS, worksheet
from calc.sources import SOURCES
from calc.units.constants import HOUR
from calc.worksheet.declare import Step
from calc.worksheet.formula import names
from calc.worksheet.next_steps import NextStep

FLOWING = ("flow", "shaken", "charging")
USES = {
    "current": (), "flow": ("current",), "per_length": ("stated",), "run": ("per_length",), "fuse_resistance": ("joint_taken",),
    "joint_taken": (), "joint_most": ("joint_drop",), "terminal_most": ("flow",), "fuse_most": ("flow",), "glow": ("flow",),
    "bank_flow": ("flow", "source", "block"), "far": ("bank_flow", "plus_drop", "minus_drop"), "block": (), "source": (),
    "joint_drop": ("flow", "joint_taken"), "middle_drop": ("flow", "joint_taken"), "shunt_drop": ("flow",), "run_drop": ("flow", "run"),
    "fuse_drop": ("flow", "fuse_resistance"), "plus_drop": ("flow", "fuse_resistance", "run", "joint_taken"),
    "minus_drop": ("flow", "run", "shunt_drop", "joint_taken"), "stated": (),
}
"""What each figure of the sound circuit is worked from, so that only what a step needs is shown."""


@cache
def needed(step: SearchStep | None) -> frozenset[str]:
    """Return the figures that a step's reading and limits rest on, with all they are worked from."""
    formulas = [graph.criteria()[name].formula for name in limits(step)] if step else []
    if step:
        formulas += [text for text in (step.expects, *(turn.below for turn in step.turns)) if text]
    if step and step.reads is Reads.VOLTS and step.state in FLOWING:
        formulas.append("far")  # the circuit as a whole, whatever part of it is measured
    found = {"current"}
    waiting = [name for text in formulas for name in names(text)]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += USES.get(name, ())
    return frozenset(found)


def _needs(name: str, also: Callable[[FaultSearch], bool] = lambda _: True) -> Callable[[FaultSearch], bool]:
    return lambda s: name in needed(s.at.step) and also(s)


def _charges(search: FaultSearch) -> bool:
    return search.circuit.readings.charges


def _draws(search: FaultSearch) -> bool:
    return not search.circuit.readings.charges


def _by_gauge(search: FaultSearch) -> bool:
    return not search.circuit.run.metric and not search.circuit.run.laid.computed


STEPS: tuple[Step[FaultSearch], ...] = (
    Step(of="stated", source="nec-8", when=_needs("stated", _by_gauge), text="{conductor}, plain copper, from the table at {reference}."),
    Step(of="stated", source="copper-iacs", when=_needs("stated", lambda s: s.circuit.run.laid.computed), text="{conductor}, plain copper, calculated from its area at {reference}."),
    Step(of="stated", source="iec-60228", when=_needs("stated", lambda s: s.circuit.run.metric), text="{conductor}, plain flexible copper, the most the standard permits at {reference}."),
    Step(of="per_length", formula="stated * (temperature - zero) / (reference - zero)", source="copper-temperature", when=_needs("per_length"), text="Warm copper has more resistance."),
    Step(of="run", formula="length * per_length", source="ohm", when=_needs("run"), text="One conductor; the other is the same."),
    Step(of="joint_taken", formula="joint", when=_needs("joint_taken", lambda s: not s.circuit.run.joint_lowered), text="As you typed it."),
    Step(of="joint_taken", source="practice", when=_needs("joint_taken", lambda s: s.circuit.run.joint_lowered), text="Your {joint} is too much for a good joint at {heaviest}: two thirds of joint heat's limit is used."),
    Step(of="fuse_resistance", formula="fuse_rated_drop / fuse + joint_taken", source="fuse-drop", when=_needs("fuse_resistance"), text="The drop of a fuse at its rating, plus its holder's contacts as one more joint."),
    Step(of="source", formula="source_resistance", when=_needs("source", lambda s: not s.circuit.bank.estimated), text="As you typed it."),
    Step(of="source", source="dc-guide", when=_needs("source", lambda s: s.circuit.bank.estimated), text="Our estimate: the short-circuit current is ten times the amp-hours. Published for lead-acid; for LFP without a source."),
    Step(of="current", formula="load", when=lambda s: s.circuit.load.power is None, text="As you typed it."),
    Step(of="current", source="ohm", when=lambda s: s.circuit.load.power is not None, text="A load of constant power draws more amps at lower voltage; the circuit settles at this."),
    Step(of="flow", formula="current", when=_needs("flow", _draws), text="The load's current flows on the run."),
    Step(of="flow", formula="charger", when=_needs("flow", _charges), text="For this symptom the charger's current flows on the run."),
    Step(of="bank_flow", formula="rest_full - flow * source", source="ohm", when=_needs("bank_flow", _draws), text="A full, rested bank, less the drop in its own resistance."),
    Step(of="bank_flow", formula="rest_full + flow * source", source="ohm", when=_needs("bank_flow", _charges), text="A full, rested bank, raised by charging."),
    Step(of="joint_drop", formula="flow * joint_taken", source="ohm", when=_needs("joint_drop"), text="A good joint."),
    Step(of="middle_drop", formula="flow * joint_taken * (joints - 2)", source="ohm", when=_needs("middle_drop"), text="Every joint of a side except post and device."),
    Step(of="fuse_drop", formula="flow * fuse_resistance", source="ohm", when=_needs("fuse_drop"), text="The fuse in its holder."),
    Step(of="run_drop", formula="flow * run", source="ohm", when=_needs("run_drop"), text="One conductor, end to end."),
    Step(of="shunt_drop", formula="flow * shunt", source="ohm", when=_needs("shunt_drop"), text="The shunt, by its stamp."),
    Step(of="plus_drop", formula="flow * (joints * joint_taken + fuse_resistance + run)", source="ohm", when=_needs("plus_drop"), text="The plus side, all of it."),
    Step(of="minus_drop", formula="flow * (joints * joint_taken + shunt + run)", source="ohm", when=_needs("minus_drop"), text="The minus side, all of it."),
    Step(of="far", formula="bank_flow - plus_drop - minus_drop", when=_needs("far", _draws), text="What is left at the device."),
    Step(of="far", formula="bank_flow + plus_drop + minus_drop", when=_needs("far", _charges), text="What the charger must hold at its own terminals."),
    Step(of="block", formula="rest_full / blocks", when=_needs("block"), text="Each battery has its part."),
    Step(of="volts", source="ohm", when=lambda s: s.reads is Reads.VOLTS and not s.still, text="From the values above, for a circuit without a fault."),
    Step(of="volts", source="ohm", when=lambda s: s.reads is Reads.VOLTS and s.still, text="No current flows, so a good part has no drop; across an open one is the whole voltage."),
    Step(of="amps", source="ohm", when=lambda s: s.reads is Reads.AMPS, text="From your own values."),
    Step(of="ohms", source="ohm", when=lambda s: s.reads is Reads.OHMS, text="System voltage divided by the fuse's rating."),
    Step(of="ampere_hours", source="practice", when=lambda s: s.reads is Reads.CHARGE, text="The label, for a new bank."),
)
# fmt: on


def _end(search: FaultSearch) -> End:
    assert search.at.end is not None  # a walk stands at a step or at an end
    return search.at.end


def now(search: FaultSearch) -> str:
    """Return what to do now."""
    return search.at.step.text if search.at.step else _end(search).fix


def brief(search: FaultSearch) -> str:
    """Return where the search stands in a few words."""
    return search.at.step.text if search.at.step else _end(search).cause


def probes(search: FaultSearch) -> str | None:
    """Return where the meter goes, None where nothing is measured."""
    return meter(search.at.step, search.way_in.charging) if search.at.step else None


def state_of(search: FaultSearch) -> str | None:
    """Return what must run meanwhile, None where nothing is measured."""
    return setting(search.at.step, search.way_in.charging) if search.at.step else None


def ways_on(search: FaultSearch) -> tuple[NextStep, ...]:
    """Return what may be found, each with the way it leads."""
    step, path = search.at.step, search.at.path
    if step is None:
        then = _end(search).then
        texts = (("symptom", then), ("path", ""))
        return (NextStep(f"Go on with: {graph.way_in(then).about}", texts),) if then else ()
    return tuple(
        NextStep(answered(step, turn, search.values), (("path", f"{path}.{turn.id}"),))
        for turn in possible(step, search.values)
    )


def ways_back(search: FaultSearch) -> tuple[NextStep, ...]:
    """Return the ways back: one step, and to the start."""
    if not search.at.taken:
        return ()
    return (
        NextStep("One step back", (("path", search.at.path.rpartition(".")[0]),)),
        NextStep("Start again", (("path", ""),)),
    )


def trail(search: FaultSearch) -> tuple[str, ...]:
    """Return the steps so far, each with what was found."""
    return tuple(
        f"{step.text} — {answered(step, turn, search.values)}." for step, turn in search.at.taken
    )


def prevention(search: FaultSearch) -> tuple[NextStep, ...]:
    """Return the worksheets that keep a cause from coming back, with the reader's own figures."""
    if search.at.end is None:
        return ()
    own = _carried(search)
    return tuple(
        NextStep(
            worksheet(name).title,
            tuple((f, own[ours]) for f, ours in graph.carried(name).items() if ours in own),
            name,
        )
        for name in search.at.end.prevents
        if name in IDS
    )


def _carried(search: FaultSearch) -> dict[str, str]:
    bank, run, joint = search.circuit.bank, search.circuit.run.laid.run, _end(search).joint
    return {
        **({"joint": joint} if joint else {}),
        "joint_limit": f"{search.values['joint_most']:.6g} V",
        "not_known": "",
        "current": f"{search.circuit.readings.current:.6g} A",
        "length": f"{run.length:.6g} m",
        "conductor": run.conductor,
        "system": f"{bank.system:g} V",
        "charging_to": f"{bank.charging_to:.6g} V",
        "capacity": f"{bank.capacity / HOUR:.6g} A.h",
        "chemistry": bank.chemistry,
    }


def limits_told(search: FaultSearch) -> tuple[str, ...]:
    """Return the limits of this step, each with its value, its reason and its source."""
    if not search.at.step or search.reads is None:
        return ()
    told = []
    for name in limits(search.at.step):
        one = graph.criteria()[name]
        value = amount(search.values[name], search.reads)
        label = f"{one.label[0].upper()}{one.label[1:]}"
        told.append(f"{label}: {value}. {one.why} [{SOURCES[one.source].title}]")
    return tuple(told)
