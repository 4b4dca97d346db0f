"""Facts of a van's conductors: what guards each of them, and what its ends name."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated

from calc.electrical.drop_limits import Duty, drop_limit
from calc.units.compare import at_least
from calc.units.si import Amperes, Metres, Tag, Volts
from calc.van.bind import filled
from calc.van.currents import CABLES, CHARGES, PANELS
from calc.van.facts import system_volts
from calc.van.from_bank import house
from calc.van.from_runs import converter_before
from calc.van.guard import guard
from calc.van.judging import Fact, known, there
from calc.van.net import PLUS, owner
from calc.van.paths import edges, roots, runs, way
from calc.van.record import CHASSIS, Part, Van
from calc.van.row import Row
from calc.van.saying import listed
from calc.van.schedule import schedule
from calc.van.usual import as_usual
from calc.van.worked import Outcome, attempted

# 7 inches, and 40 where a sheath or enclosure covers all of it: 33 CFR 183.455(b), law for boats
BARE_AT_MOST: Annotated[Metres, Tag("unfused length at a source")] = 0.178
# The same
SHEATHED_AT_MOST: Annotated[Metres, Tag("unfused length at a source, in a sheath")] = 1.016
GUARDED = ("circuits", "cables", "inverter", "shore", "regulators", "converters")


@dataclass(frozen=True, kw_only=True)
class Run(Fact):
    """A run that leaves the bank's plus.

    `guard` is what the fuses ahead of it let through: 0 where there are surely none, None where it
    is not known. `ampacity` is what its conductor can carry. The texts are those of a fuse that
    would suit.
    """

    fused: bool | None
    guard: Amperes | None
    ampacity: Amperes | None
    fuse_text: str
    family_text: str


def guarded(van: Van) -> Iterator[Run]:
    """Yield each run of a plus conductor that has no fuse of its own."""
    for part in runs(van):
        minus = "pole" in part.values and known(part, "pole") == "minus"
        if part.kind.id not in GUARDED or minus or there(part, "fuse") is not False:
            continue
        answer = _answer(van, "wire-drop", part)
        fuse, family = _fuse(van, part)
        yield Run(
            at=part.place,
            part=part.name,
            fused=False,
            guard=guard(van, part),
            ampacity=answer.values["ampacity"] if answer else None,
            fuse_text=fuse,
            family_text=family,
        )


@dataclass(frozen=True, kw_only=True)
class Fed(Fact):
    """A main cable: what the fuses ahead of it let `through`, and the `current` that it carries."""

    through: Amperes
    current: Amperes


def fed(van: Van) -> Iterator[Fed]:
    """Yield each plus cable of which both are known, and a fuse is ahead.

    Behind a converter no fuse decides: its loads together are judged there.
    """
    for row in schedule(van).rows:
        minus = "pole" in row.part.values and known(row.part, "pole") == "minus"
        if row.part.kind.id != CABLES or minus or row.current is None:
            continue
        if converter_before(van, row.part) is not None:
            continue
        if through := guard(van, row.part):
            yield Fed(at=row.part.place, part=row.part.name, through=through, current=row.current)


@dataclass(frozen=True, kw_only=True)
class Shared(Fact):
    """The `fuse` of each of some batteries, and its `share` of what they carry together."""

    fuse: Amperes
    share: Amperes
    current: Amperes


def shared(van: Van) -> Iterator[Shared]:
    """Yield the fuse of each battery beside others, where all of them together suffice.

    Over hours like batteries side by side share by capacity; of unlike chemistries nothing is said.
    """
    batteries = house(van)
    sizes = [(one.si("capacity") or 0.0, one.si("units") or 0.0) for one in batteries]
    total = sum(capacity * units for capacity, units in sizes)
    current = _leaving(van)
    unlike = len({one.choice("chemistry") for one in batteries}) > 1
    if len(sizes) < 2 or unlike or not current or not all(map(all, sizes)):
        return
    if not all(at_least(one.through, one.current) for one in fed(van)):
        return  # told as a stop
    for one, (capacity, _) in zip(batteries, sizes, strict=True):
        fuse, share = one.si("fuse"), current * capacity / total
        if fuse is not None:
            yield Shared(at=one.place, part=one.name, fuse=fuse, share=share, current=current)


def _leaving(van: Van) -> Amperes:
    """Return the most that passes the posts of the house bank at once, drawn or charged.

    A cable from one battery to the next leaves nothing.
    """
    posts, drawn, charged = roots(van), 0.0, 0.0
    between = {one.run.id for one in edges(van)[PLUS] if {one.near, one.far} <= posts}
    for row in schedule(van).rows:
        part, found = row.part, way(van, row.part)
        at_post = found is not None and len(found.nodes) == 1
        if row.current is None or not at_post or part.id in between or part.kind.id == PANELS:
            continue
        if part.kind.id not in CHARGES:
            drawn += row.current
        if part.kind.id in (*CHARGES, CABLES):
            charged += row.current
    return max(drawn, charged)


def _answer(van: Van, sheet: str, part: Part) -> Outcome | None:
    found = filled(van, sheet, part)
    return None if found.lacking else attempted(sheet, found.texts)


def _fuse(van: Van, part: Part) -> tuple[str, str]:
    """Return a fuse and its family that would suit a run, nothing where none is found."""
    answer = _answer(van, "fuse-choice", part)
    if answer is None or answer.values["fuse"] is None:
        return "", ""
    families = answer.values["families"]
    return f"{answer.values['fuse']:.3g} A", next(iter(families or ()), "")


@dataclass(frozen=True, kw_only=True)
class Limited(Fact):
    """A converter, whose `rated` current the fuses of some runs behind it may never open at.

    `carried` tells whether their conductors carry all that it gives, shorted or not.
    """

    rated: Amperes
    fuses: str
    carried: bool


def limited(van: Van) -> Iterator[Limited]:
    """Yield each converter with the fuses behind it that it may not open."""
    idle: dict[tuple[str, bool], list[Row]] = {}
    for row in schedule(van).rows:
        device = converter_before(van, row.part)
        rated = device.si("rated_current") if device else None
        if device is None or rated is None or row.fuse is None or row.ampacity is None:
            continue
        if at_least(row.fuse, rated):
            idle.setdefault((device.id, row.limited), []).append(row)
    for (id, carried), rows in idle.items():
        device = van.by_id(id)
        rated = device.si("rated_current") if device else None
        if device is not None and rated is not None:
            names = listed([row.part.name for row in rows])
            yield Limited(
                at=device.place,
                part=device.name,
                rated=rated,
                fuses=f"the {'fuses' if len(rows) > 1 else 'fuse'} of {names}",
                carried=carried,
            )


@dataclass(frozen=True, kw_only=True)
class MeasuredDrop(Fact):
    """A voltage drop as it was measured.

    `allowed` is the run's limit, `worked` what its conductor loses, as far as anybody knows it.
    """

    drop: Volts
    allowed: Volts
    worked: Volts | None


def measured_drops(van: Van) -> Iterator[MeasuredDrop]:
    """Yield each run of which the drop was measured and the voltage is known."""
    for part in runs(van):
        drop, device = part.si("measured_drop"), converter_before(van, part)
        volts = device.si("output_voltage") if device else system_volts(van)
        if drop is None or volts is None or part.kind.id == "panels":
            continue
        limit, own = part.si("limit"), filled(van, "wire-drop", part)
        answer = attempted("wire-drop", {**own.texts, **as_usual("wire-drop", own)})
        yield MeasuredDrop(
            at=part.place,
            part=part.name,
            drop=drop,
            allowed=(drop_limit(Duty.CRITICAL) if limit is None else limit) * volts,
            worked=answer.values["drop"] if answer else None,
        )


@dataclass(frozen=True, kw_only=True)
class MainFuse(Fact):
    """The first fuse behind the bank: how much conductor stands `unfused` ahead of it.

    `allowed` is the most that it may be, longer where it is `sheathed`.
    """

    unfused: Metres
    sheathed: bool

    @property
    def allowed(self) -> Metres:
        """How far from the post it may stand."""
        return SHEATHED_AT_MOST if self.sheathed else BARE_AT_MOST


def leaves_bank(van: Van, part: Part) -> bool:
    """Return whether a part is a battery of the house bank, or a plus cable that starts at it."""
    if part.kind.id == "batteries":
        return part.id in roots(van)
    found = way(van, part)
    return found is not None and not found.runs and known(part, "pole") != "minus"


def main_fuses(van: Van) -> Iterator[MainFuse]:
    """Yield each fuse that is the first behind the bank, and of which the place is known."""
    for part in (*van.all("batteries"), *van.all("cables")):
        unfused = part.si("unfused")
        if unfused is not None and there(part, "fuse") is True and leaves_bank(van, part):
            sheathed = known(part, "sheathed") == "yes"
            yield MainFuse(at=part.place, part=part.name, unfused=unfused, sheathed=sheathed)


@dataclass(frozen=True, kw_only=True)
class Dangling(Fact):
    """A value that names a part which is not in the record."""

    named: str


def dangling(van: Van) -> Iterator[Dangling]:
    """Yield each reference that leads nowhere."""
    for part in van.everything():
        for key in part.kind.keys:
            name = part.text(key.id) if key.refers else ""
            if name and owner(name) not in (CHASSIS, "bank") and van.by_id(owner(name)) is None:
                yield Dangling(at=f"{part.place}.{key.id}", part=part.name, named=name)
