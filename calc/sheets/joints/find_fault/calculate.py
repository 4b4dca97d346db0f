"""find-fault, the sum: where the search stands, what to do next, and what a meter should show."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cache
from math import inf
from typing import Any

from calc.electrical.ampacity import bears
from calc.electrical.conductors import conductor as named_conductor
from calc.electrical.contact import SMALL_DROP
from calc.faults import graph
from calc.faults.graph import AMPS, CHARGE, OHMS, VOLTS, End, Step
from calc.faults.model import FUSE_DROP, HOUR, NIGHT, Given, Healthy, Unfed, cells_of, healthy
from calc.faults.walk import Values, Walk, amount, answered, limits, possible, walk
from calc.sheets import IDS, worksheet
from calc.sources import SOURCES
from calc.units.kinds import CURRENT, POWER
from calc.units.shown import DOWN, quantity_text
from calc.worksheet.fields import Measured, Problem
from calc.worksheet.formula import names, work
from calc.worksheet.next_steps import Move

INSULATION = 60.0  # °C, what a cable is rated for if nothing is printed on it
ZERO = -234.5  # °C, zero-resistance temperature of copper

FLOWING = ("flow", "shaken", "charging")
USES = {
    "current": (), "flow": ("current",), "per_length": ("stated",), "run": ("per_length",), "fuse_resistance": (),
    "bank_flow": ("flow", "source", "block"), "far": ("bank_flow", "plus_drop", "minus_drop"), "block": (), "source": (),
    "joint_drop": ("flow",), "middle_drop": ("flow",), "shunt_drop": ("flow",), "run_drop": ("flow", "run"),
    "fuse_drop": ("flow", "fuse_resistance"), "plus_drop": ("flow", "fuse_resistance", "run"),
    "minus_drop": ("flow", "run", "shunt_drop"), "stated": (),
}  # fmt: skip
"""What each figure of the sound circuit is worked from, so that only what a step needs is shown."""


@dataclass(frozen=True, kw_only=True)
class FindFault(Healthy):
    """Where the search stands, as a reader sees it, beside the sound circuit's figures.

    Of `volts`, `amps`, `ohms` and `ampere_hours` the one that this step reads is there. `found`
    tells that an end is reached, `clear` that no fault was found, `danger` what comes first.
    """

    step: str
    brief: str
    number: str
    cause: str | None
    remedy: str | None
    probes: str | None
    setting: str | None
    volts: float | None
    amps: float | None
    ohms: float | None
    ampere_hours: float | None
    why: str | None
    safety: str
    moves: tuple[Move, ...]
    prevents: tuple[Move, ...]
    back: tuple[Move, ...]
    trail: tuple[str, ...]
    limits: tuple[str, ...]
    found: bool
    clear: bool
    danger: bool
    odd: bool
    reads: str
    cited: frozenset[str]
    needed: frozenset[str]
    bears: float | None
    load_is_power: bool
    from_charger: bool
    metric: bool
    computed: bool
    fuse_rated_drop: float
    zero: float


def run(
    *, symptom: str, system: str, chemistry: str, load: Measured, length: float, conductor: str, fuse: float,
    charger: float, capacity: float, standby: float, idle: float, limit: float, joint: float, joints: float,
    shunt: float, temperature: float, source_resistance: float | None, blocks: float,
    charge_voltage: float | None, cutoff: float, path: str | None,
) -> FindFault:
    """Return the next step of the search for `symptom` after the turns of `path`, or its end."""
    volts = float(system.split()[0])
    if blocks > cells_of(volts, chemistry):
        raise Problem("blocks", f"Batteries or cells in series must be {cells_of(volts, chemistry)} or fewer: the bank has no more cells.")
    charging = graph.symptom(symptom).charging
    sound = _sound(
        Given(
            charging=charging, system=volts, chemistry=chemistry, load=load.value, load_is_power=load.kind is POWER,
            length=length, conductor=conductor, temperature=temperature, fuse=fuse, joint=joint, joints=joints,
            shunt=shunt, charger=charger, capacity=capacity, source_resistance=source_resistance, blocks=blocks,
            charge_voltage=charge_voltage,
        )
    )  # fmt: skip
    worked = {part.name: getattr(sound, part.name) for part in fields(Healthy)}
    carries = bears(conductor, INSULATION)
    values = figures({
        **worked, "system": system, "fuse": fuse, "charger": charger, "capacity": capacity, "standby": standby,
        "idle": idle, "limit": limit, "cutoff": cutoff, "bears": carries,
    })  # fmt: skip
    at = walk(symptom, path or "")
    expected = float(work(at.step.expects, values)) if at.step and at.step.expects else None
    reads = at.step.reads if at.step else ""
    size = named_conductor(conductor)
    carried = {
        "current": f"{sound.current:.6g} A", "length": f"{length:.6g} m", "conductor": conductor, "system": system,
        "charging_to": f"{sound.charging_to:.6g} V", "capacity": f"{capacity / HOUR:.6g} A.h", "chemistry": chemistry,
    }  # fmt: skip
    return FindFault(
        **worked,
        step=at.step.says if at.step else _end(at).fix,
        brief=_brief(at),
        number=str(len(at.taken) + 1),
        cause=at.end.cause if at.end else None,
        remedy=at.end.repair if at.end else None,
        probes=meter(at.step, charging) if at.step else None,
        setting=graph.words("settings", charging)[at.step.state] if at.step and at.step.state else None,
        volts=expected if reads == VOLTS else None,
        amps=expected if reads == AMPS else None,
        ohms=expected if reads == OHMS else None,
        ampere_hours=expected if reads == CHARGE else None,
        why=at.step.why if at.step else None,
        safety=graph.symptom(symptom).safety,
        moves=_moves(at, values),
        prevents=_prevents(at.end, carried) if at.end else (),
        back=_back(at),
        trail=tuple(f"{step.says} — {answered(step, turn, values)}." for step, turn in at.taken),
        limits=tuple(_limit(name, reads, values) for name in limits(at.step)) if at.step and reads else (),
        found=at.end is not None,
        clear=at.end is not None and at.end.clear,
        danger=bool((at.end and at.end.danger) or (at.step and at.step.danger)),
        odd=at.odd,
        reads=reads,
        cited=frozenset(graph.criteria()[name].source for name in limits(at.step)) if at.step else frozenset(),
        needed=_needed(at.step),
        bears=carries,
        load_is_power=load.kind is POWER,
        from_charger=charging,
        metric=size.series != "AWG",
        computed=size.computed,
        fuse_rated_drop=FUSE_DROP,
        zero=ZERO,
    )


def figures(known: Mapping[str, Any]) -> Values:
    """Return what a formula of the search may name, from the worksheet's own values by id."""
    numbers = {name: float(value) for name, value in known.items() if isinstance(value, float | int)}
    numbers |= {"system": float(known["system"].split()[0]), "bears": inf if known["bears"] is None else known["bears"]}
    return Values(numbers | {"hour": HOUR, "day": 24 * HOUR, "night": NIGHT, "last_digit": SMALL_DROP})


def _sound(given: Given) -> Healthy:
    try:
        return healthy(given)
    except Unfed as unfed:
        most = quantity_text(unfed.most, POWER if unfed.power else CURRENT, way=DOWN)
        raise Problem("load", f"Load in question must be less than {most}: this bank and run can feed no more.") from None


@cache
def _needed(step: Step | None) -> frozenset[str]:
    """Return the figures that a step's reading and limits rest on, with all they are worked from."""
    formulas = [graph.criteria()[name].formula for name in limits(step)] if step else []
    if step:
        formulas += [text for text in (step.expects, *(turn.below for turn in step.turns)) if text]
    if step and step.reads == VOLTS and step.state in FLOWING:
        formulas.append("far")  # the circuit as a whole, whatever part of it is measured
    found = {"current"}
    waiting = [name for text in formulas for name in names(text)]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += USES.get(name, ())
    return frozenset(found)


def _end(at: Walk) -> End:
    assert at.end is not None  # a walk stands at a step or at an end
    return at.end


def _brief(at: Walk) -> str:
    if at.step:
        return at.step.says
    return _end(at).cause


def meter(step: Step, charging: bool) -> str | None:
    """Return where the meter goes."""
    if step.clamp:
        return f"{graph.words('clamps', charging)[step.clamp]}."
    if not step.red:
        return None
    places = graph.words("places", charging)
    sign = " The sign does not matter." if step.reads == VOLTS else ""
    return f"Red probe on {places[step.red]}; black probe on {places[step.black]}.{sign}"


def _moves(at: Walk, values: Values) -> tuple[Move, ...]:
    if at.step is None:
        then = _end(at).then
        texts = (("symptom", then), ("path", ""))
        return (Move(f"Go on with: {graph.symptom(then).about}", texts),) if then else ()
    return tuple(
        Move(answered(at.step, turn, values), (("path", f"{at.path}.{turn.id}"),))
        for turn in possible(at.step, values)
    )


def _back(at: Walk) -> tuple[Move, ...]:
    """Return the ways back: one step, and to the start."""
    if not at.taken:
        return ()
    before = at.path.rpartition(".")[0] if len(at.taken) > 1 else ""
    return (Move("One step back", (("path", before),)), Move("Start again", (("path", ""),)))


def _prevents(end: End, carried: dict[str, str]) -> tuple[Move, ...]:
    """Return the worksheets that keep a cause from coming back, with the reader's own figures."""
    return tuple(
        Move(worksheet(name).title, tuple((field, carried[own]) for field, own in graph.carried(name).items()), name)
        for name in end.prevents
        if name in IDS
    )


def _limit(name: str, reads: str, values: Values) -> str:
    one = graph.criteria()[name]
    return f"{one.label[0].upper()}{one.label[1:]}: {amount(values[name], reads)}. {one.why} [{SOURCES[one.source].title}]"
