"""From a van to what is to be drawn: which bars have a line, and which run joins which."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from calc.van.diagram.drawing import Stroke
from calc.van.diagram.ends import Ends
from calc.van.diagram.said import sentence
from calc.van.diagram.scheme import Bar, Cell, Item, Run, Scheme, Token
from calc.van.diagram.supplies import mains_of, sources_of
from calc.van.diagram.words import Writer, tokens, told
from calc.van.net import BANK, MINUS, PLUS, Conductor, owner
from calc.van.record import CHASSIS, Part, Van
from calc.van.values import State

if TYPE_CHECKING:
    from calc.van.review import Review
    from calc.van.schedule import Schedule


MOST_BESIDE = 4  # batteries in parallel that are drawn one by one


@dataclass
class Reader(Ends):
    """Reads the runs of one van."""

    @cached_property
    def _isolator_ids(self) -> frozenset[str]:
        return frozenset(one.id for one in self.van.all("isolators"))

    def _shunt_in(self, part: Part) -> bool:
        shunt = self.van.one("shunt")
        return bool(
            shunt and shunt.id not in self.inside and owner(shunt.text("in_line")) == part.id
        )

    def feed(self, chain: Sequence[Conductor]) -> Run:
        """Return a main cable, or several one after another, from bar to bar."""
        first, last = chain[0], chain[-1]
        stroke = Stroke.MINUS if first.pole == MINUS else Stroke.PLUS
        cells: list[Cell] = [Cell("start", above=self.writer.end_words(first))]
        for number, one in enumerate(chain):
            part = one.part
            more = "" if not number else str(number + 1)
            words = self.writer
            fuse = words.fuse(part, f"fuse{more}") if one.pole != MINUS else None
            if fuse:
                cells.append(fuse)
            within = one is not last
            cells += [
                Cell(f"switch{more}", c.symbol, c.above, c.below, stroke)
                for c in words.isolators(part)
                if not within or owner(one.end) not in self._isolator_ids
            ]
            extra = words.return_words(part) if part.choice("pole") == "both" else ()
            extra = extra if one.pole else tokens("pole not said")
            cells.append(words.wire(part, f"wire{more}", (*extra, *words.findings(part))))
            shunt = self.van.one("shunt")
            node = self.van.by_id(owner(one.end)) if within else None
            if node and node.kind.id == "isolators":
                cells.append(words.isolator(node, f"device{more}", stroke))
            elif shunt and (node is shunt or (not within and self._shunt_in(part))):
                cells.append(self.shunt(shunt, f"device{more}", stroke))
        cells.append(
            Cell("end", above=(Token(words.terminal(last.end) or words.unknown, strong=True),))
        )
        return Run(
            id=first.part.id,
            cells=tuple(cells),
            start=self.joined(first.start, first.pole),
            end=self.joined(last.end, last.pole),
            before=stroke,
            said=sentence(f"Cable {first.part.name}", cells),
        )

    def converter(self, part: Part) -> Run:
        """Return a converter with its supply, up to what it feeds."""
        words = self.writer
        plus, fuse = words.conductor(part, PLUS), words.fuse(part)
        above = (Token(words.marks.part(part), strong=True), *tokens(part.name))
        rated = tokens(told(part, "output_voltage"), told(part, "rated_current"))
        cells = [
            Cell("start", above=words.end_words(plus), below=words.return_words(part)),
            *((fuse,) if fuse else ()),
            *words.isolators(part),
            words.wire(part),
            Cell("device", "dc-charger", above, (*rated, *words.findings(part))),
        ]
        out = f"{part.id}.out-{PLUS}"
        end = self.joined(out, PLUS)
        if end:
            cells.append(Cell("end", above=(Token(words.terminal(out), strong=True),)))
        return Run(
            part.id, tuple(cells), start=self.joined(plus.start, PLUS) if plus else "", end=end,
            said=sentence(f"Converter {part.name}", cells),
        )  # fmt: skip

    def shunt(self, shunt: Part, slot: str, stroke: Stroke) -> Cell:
        """Return the cell of the shunt."""
        above = (Token(self.writer.marks.part(shunt), strong=True), *tokens(told(shunt, "rating")))
        below = (*tokens("shunt"), *self.writer.findings(shunt, "monitor"))
        return Cell(slot, "shunt", above, below, stroke)

    def circuit(self, part: Part) -> Run:
        """Return a circuit from its terminal to where its negative ends."""
        words = self.writer
        plus, minus = words.conductor(part, PLUS), words.conductor(part, MINUS)
        start = self.joined(plus.start, PLUS) if plus else ""
        end = "" if not minus or minus.by_chassis else self.joined(minus.start, MINUS)
        first, last = words.start(plus), words.returned(part)
        if not start:
            first = Cell("start", "from", first.above)
        if not end and not last.symbol:
            last = Cell("return", "to", last.above, last.below, Stroke.MINUS)
        fuse = words.fuse(part)
        cells = (
            first,
            *((fuse,) if fuse else ()),
            *words.isolators(part),
            words.wire(part),
            *words.switch(part),
            words.load(part),
            last,
        )
        return Run(
            id=part.id, cells=cells, start=start, end=end, circuit=True,
            said=sentence(f"Circuit {words.marks.part(part)}", cells),
        )  # fmt: skip

    def battery(self, part: Part) -> tuple[Run, ...]:
        """Return a battery of the bank from its negative to its positive terminal.

        Each of a few in parallel has a line, for each has its fuse and its cables.
        """
        words = self.writer
        units, series = int(part.si("units") or 1), part.text("series") or "1"
        each = units if units <= MOST_BESIDE else 1
        in_parallel = f"{units} in parallel" if units > each else ""
        in_series = f"{series} in series" if series != "1" else ""
        fuse = words.fuse(part)
        runs = []
        for number in range(1, each + 1):
            which = f"{number} of {each}" if each > 1 else ""
            above = (Token(words.marks.part(part), strong=True), *tokens(part.name, which))
            said = (told(part, key) for key in ("place", "chemistry", "capacity"))
            below = tokens(*said, in_parallel, in_series) if number == 1 else ()
            cells = (
                Cell("start", above=(Token("−"),)),
                Cell("battery", "battery", above, below + (words.findings(part) if below else ())),
                *((fuse,) if fuse else ()),
                Cell("end", above=(Token("+"),)),
            )
            runs.append(
                Run(
                    id=f"{part.id} {which}".strip(), cells=cells,
                    start=f"{BANK}−", end=f"{BANK}+", before=Stroke.MINUS,
                    start_words=tokens("bank −"), end_words=tokens("bank +"),
                    said=sentence("Battery", cells[1:-1]),
                )
            )  # fmt: skip
        return tuple(runs)


def bonded(bar: Bar) -> Run:
    """Return the line from a negative bar to the chassis."""
    cells = (
        Cell("start", above=bar.words[:1]),
        Cell("device", "chassis", tokens("joined to the chassis here"), (), Stroke.MINUS),
    )
    return Run(f"bond {bar.id}", cells, start=bar.id, before=Stroke.MINUS)


def scheme_of(
    van: Van, schedule: Schedule | None = None, review: Review | None = None, brief: bool = False
) -> Scheme:
    """Return what is to be drawn of a van, with what its schedule and review have worked out.

    A `brief` one leaves out where loads are, which the lists say too.
    """
    reader = Reader(Writer(van, schedule, review, brief))
    feeds = [reader.feed(chain) for chain in reader.cables]
    feeds += [reader.converter(part) for part in van.all("converters")]
    minus = [chain[0].pole == MINUS for chain in reader.cables]
    minus += [False] * len(van.all("converters"))
    plus_bars, minus_bars = reader.bars(PLUS), reader.bars(MINUS)
    mains, outlets = mains_of(reader)
    sources = sources_of(reader)
    circuits = [one for one in van.all("circuits") if one.id not in outlets]
    house = [one for one in van.all("batteries") if one.choice("role") != "starter"]
    batteries = tuple(run for one in house for run in reader.battery(one))
    runs = tuple(reader.circuit(one) for one in circuits)
    return Scheme(
        name=van.name,
        title=_title(van),
        sources=sources,
        batteries=batteries,
        bars=plus_bars,
        feeds=tuple(
            _joined(run for run, is_minus in zip(feeds, minus, strict=True) if not is_minus)
        ),
        circuits=runs,
        returns=minus_bars,
        minus_feeds=tuple(
            (
                *_joined(run for run, is_minus in zip(feeds, minus, strict=True) if is_minus),
                *(bonded(bar) for bar in minus_bars if bar.to_chassis),
            )
        ),
        mains=mains,
        notes=tuple(_notes(reader, plus_bars)),
    )


def _joined(runs: Iterable[Run]) -> Iterable[Run]:
    """Yield runs; an end that joins no bar with a line has a sign that it goes on elsewhere."""
    for run in runs:
        cells = list(run.cells)
        if not run.start:
            cells[0] = Cell("start", "from", cells[0].above, cells[0].below)
        last = cells[-1]
        if not run.end and last.slot == "end":
            cells[-1] = Cell(last.slot, "to", last.above, last.below, last.after)
        yield Run(
            run.id, tuple(cells), run.start, run.end, run.before, run.start_words, run.end_words,
            said=run.said,
        )  # fmt: skip


def _title(van: Van) -> tuple[str, ...]:
    own = van.parts["van"][0]
    said = (
        "as found" if van.inspection else "as planned",
        told(own, "date"),
        told(own, "inspector"),
    )
    return (
        van.name,
        f"Electrical diagram, {told(own, 'system') or 'system voltage not said'}",
        ", ".join(one for one in said if one),
        "Not a substitute for the maker’s instructions, local rules or a qualified person.",
    )


def _notes(reader: Reader, bars: Sequence[Bar]) -> Iterable[tuple[Item, ...]]:
    """Yield what no line shows: what stays live, what is not placed, findings on the whole van."""
    van, writer = reader.van, reader.writer
    left = writer.findings_left()
    if left:
        yield (Token("Findings on other parts:"), *left)
    for one in van.all("isolators"):
        live = told(one, "stays_live", "not seen")
        mark = Token(writer.marks.part(one), strong=True)
        if live:
            yield (mark, Token(f"off: still live: {live}"))
        if not told(one, "in_line") and one.id not in reader.inside:
            yield (mark, *tokens(f"{one.name}: in which line is not said"))
    shunt = van.one("shunt")
    if shunt and told(shunt, "bypassed_by"):
        yield tokens(f"Not counted by the shunt: {told(shunt, 'bypassed_by')}")
    bank = van.one("bank")
    if bank and told(bank, "take_off"):
        yield tokens(f"Bank cables leave: {told(bank, 'take_off')}")
    if not bars:
        unseen = van.stated("batteries") in (State.NOT_SEEN, State.BLANK)
        yield tokens("Bank: not said" if unseen else "No house battery")
    if not any(bar.to_chassis for bar in reader.bars(MINUS)):
        bond = van.parts["van"][0]["chassis_bond"]
        words = {State.NONE: "none: the chassis carries no negative", State.NOT_SEEN: "not seen"}
        said = words.get(bond.state) or bond.text or "not said"
        yield tokens(f"Negative joined to the chassis at: {said}")


__all__ = ["CHASSIS", "Reader", "scheme_of"]
