"""Sources and mains of a van as runs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from calc.van.diagram.drawing import Stroke
from calc.van.diagram.said import sentence
from calc.van.diagram.scheme import Cell, Item, Mains, Run, Source, Token
from calc.van.diagram.words import tokens, told
from calc.van.net import PLUS, owner
from calc.van.record import Part
from calc.van.values import State

if TYPE_CHECKING:
    from calc.van.diagram.read import Reader

MOST_OUTLETS = 4
_AT_MAINS = {"230-V": "230 V", "120-V": "120 V", "100-V": "100 V"}
_FAR, _NEAR = ("both-ends", "starter-battery-only"), ("starter-battery-only", "no-fuse")


def sources_of(reader: Reader) -> tuple[Source, ...]:
    """Return the sources: panels by their regulators, then the alternator."""
    return (*_solar(reader), *_alternator(reader))


def _solar(reader: Reader) -> Iterator[Source]:
    van, words = reader.van, reader.writer
    strings: dict[str, list[Part]] = {}
    for panel in van.all("panels"):
        named = panel.text("regulator") or panel.text("from")
        part = van.by_id(owner(named))
        known = part.id if part and part.kind.id == "regulators" else ""
        strings.setdefault(known, []).append(panel)
    for regulator in van.all("regulators"):
        own = strings.get(regulator.id, [])
        cells = [one for panel in own[:1] for one in _panel(reader, panel)]
        kind, limit = told(regulator, "kind"), told(regulator, "current_limit")
        above = (Token(words.marks.part(regulator), strong=True), *tokens(regulator.name))
        below = (*tokens(kind, limit), *words.findings(regulator))
        cells.append(Cell("device", "regulator", above, below))
        cells += _to_bar(reader, regulator)
        others = tuple(_string(reader, panel, regulator) for panel in own[1:])
        yield Source(_to(reader, regulator, cells, "Solar"), others)
    for panel in strings.get("", []):
        cells = [
            *_panel(reader, panel),
            Cell("end", above=words.end_words(words.conductor(panel, PLUS))),
        ]
        yield Source(_to(reader, panel, cells, "Solar"))


def _panel(reader: Reader, panel: Part) -> tuple[Cell, ...]:
    words = reader.writer
    series, strings = panel.text("series") or "1", panel.text("strings") or "1"
    count = [told(panel, "power", "power not seen")]
    count += [f"{series} in series"] if series != "1" else []
    count += [f"{strings} in parallel"] if strings != "1" else []
    above = (Token(words.marks.part(panel), strong=True), *tokens(panel.name))
    below = (*tokens(*count), *words.findings(panel))
    isolator = words.isolators(panel, "switch1")
    if not isolator and panel.choice("isolator") == "yes":
        mark = Token(words.marks.built_in_isolator(panel), strong=True)
        isolator = (Cell("switch1", "isolator", (mark,), tokens("isolator")),)
    fuse = words.fuse(panel, "fuse1")
    return (
        Cell("source", "panel", above, below),
        *((fuse,) if fuse else ()),
        words.wire(panel, "wire1"),
        *isolator,
    )


def _string(reader: Reader, panel: Part, regulator: Part) -> Run:
    cells = _panel(reader, panel)
    to = (Token(reader.writer.marks.part(regulator), strong=True),)
    return Run(
        panel.id, cells, end="joined", end_words=to, said=sentence("Solar", cells, to[0].text)
    )


def _to_bar(reader: Reader, part: Part) -> list[Cell]:
    """Return the cells between a source's device and the bar."""
    words = reader.writer
    fuse = words.fuse(part)
    plus = words.end_words(words.conductor(part, PLUS))
    end = Cell("end", above=plus, below=words.return_words(part))
    return [words.wire(part), *words.isolators(part), *((fuse,) if fuse else ()), end]


def _to(reader: Reader, part: Part, cells: list[Cell], heading: str) -> Run:
    plus = reader.writer.conductor(part, PLUS)
    end = reader.joined(plus.start, PLUS) if plus else ""
    if not end:
        cells = [*cells[:-1], cells[-1]._replace(symbol="to")]
    return Run(part.id, tuple(cells), end=end, said=sentence(heading, cells))


def _alternator(reader: Reader) -> Iterator[Source]:
    van, words = reader.van, reader.writer
    part = van.one("alternator")
    starters = [one for one in van.all("batteries") if one.choice("role") == "starter"]
    if part is None:
        return
    battery = [item for one in starters for item in _starter(reader, one)]
    above = (Token(words.marks.part(part), strong=True), *tokens("alternator"))
    below = (*tokens(told(part, "alternator")), *battery)
    cells = [Cell("source", "generator", above, below)]
    fused = part.choice("fused")
    if fused in _FAR:
        fuse = words.fuse(part, "switch1", far=True)
        cells += [fuse] if fuse else []
    method = part.choice("method")
    symbol, word = {
        "relay": ("relay", "split-charge relay"),
        "charger": ("dc-charger", "battery-to-battery charger"),
    }.get(method or "", ("load", f"joined by: {words.unknown}"))
    device = (*tokens(told(part, "charger_limit")), *words.findings(part))
    cells.append(Cell("device", symbol, tokens(word), device))
    after = _to_bar(reader, part)
    cells += [one for one in after if fused not in _NEAR or one.slot != "fuse"]
    yield Source(_to(reader, part, cells, "Alternator"))


def _starter(reader: Reader, battery: Part) -> tuple[Item, ...]:
    words = reader.writer
    return (
        Token(words.marks.part(battery), strong=True),
        *tokens(battery.name),
        *words.findings(battery),
    )


def mains_of(reader: Reader) -> tuple[Mains | None, frozenset[str]]:
    """Return the mains, and the ids of the circuits that are outlets of the inverter."""
    van = reader.van
    mains, shore, inverter = van.one("mains"), van.one("shore"), van.one("inverter")
    if not (mains or shore or inverter):
        said = {State.NONE: "No mains in this van", State.NOT_SEEN: "Mains: not seen"}
        title = said.get(van.stated("mains"), "")
        return (Mains(title) if title else None), frozenset()
    region = _AT_MAINS.get(van.parts["van"][0].choice("mains_region") or "", "")
    volts = told(mains, "supply_voltage") if mains else ""
    fed = [one for one in van.all("circuits") if inverter and _by_inverter(reader, one)]
    outlets = fed[:MOST_OUTLETS]
    switched = bool(
        mains and inverter and mains.choice("changeover") in ("changeover-switch", "inverter")
    )
    has_inlet = bool(mains and mains.choice("inlet") != "no")
    return (
        Mains(
            title=f"Mains {volts or region}: qualified person only".replace("  ", " "),
            supply=_supply(reader, mains) if mains and has_inlet else None,
            shore=_shore(reader, shore, has_inlet) if shore else None,
            sockets=_sockets(reader) if has_inlet and not switched else None,
            inverter=_inverter(reader, inverter, mains, switched and has_inlet)
            if inverter
            else None,
            changeover=switched and has_inlet,
            outlets=tuple(_outlet(reader, one) for one in outlets),
            words=tuple(_mains_words(reader, mains, inverter)),
        ),
        frozenset(one.id for one in outlets),
    )


def _by_inverter(reader: Reader, circuit: Part) -> bool:
    part = reader.van.by_id(owner(circuit.text("from")))
    if part is not None:
        return part.kind.id == "inverter"
    return circuit.choice("route") == "inverter" and not circuit.text("from")


def _supply(reader: Reader, mains: Part) -> Run:
    words, marks = reader.writer, reader.writer.marks.of_mains
    supply = told(mains, "supply_limit")
    inlet = Cell(
        "inlet", "inlet", (Token(marks["inlet"], strong=True), *tokens("shore inlet")),
        (*tokens(supply), *words.findings(mains)), Stroke.MAINS,
    )  # fmt: skip
    cells = [inlet]
    if mains["breaker"].state is not State.NONE:
        rated = told(mains, "breaker", "not seen")
        poles = {"both-poles": "both poles", "live-only": "live only"}.get(
            mains.choice("switching") or "", f"poles {told(mains, 'switching') or words.unknown}"
        )
        above = (Token(marks["breaker"], strong=True), *tokens(rated))
        cells.append(Cell("breaker", "breaker-2", above, tokens(poles), Stroke.MAINS))
    if mains.choice("residual") != "not-fitted":
        kind = told(mains, "residual_type", "type not seen")
        above = (Token(marks["residual"], strong=True), *tokens("residual-current device"))
        below = tokens(kind, told(mains, "residual", "not seen"))
        cells.append(Cell("residual", "residual", above, below, Stroke.MAINS))
    return Run(
        "supply",
        tuple(cells),
        end="mains",
        before=Stroke.MAINS,
        said=sentence("Shore power", cells),
    )


def _shore(reader: Reader, shore: Part, supplied: bool) -> Run:
    words = reader.writer
    above = (Token(words.marks.part(shore), strong=True), *tokens("charger"))
    below = (*tokens(told(shore, "charger")), *words.findings(shore))
    cells = _from_bar(reader, shore, Cell("device", "charger", above, below, Stroke.MAINS))
    return _off(reader, shore, cells, "mains" if supplied else "", "Shore charger")


def _inverter(reader: Reader, inverter: Part, mains: Part | None, switched: bool) -> Run:
    words = reader.writer
    above = (Token(words.marks.part(inverter), strong=True), *tokens("inverter"))
    below = (*tokens(told(inverter, "rating"), told(inverter, "place")), *words.findings(inverter))
    cells = _from_bar(reader, inverter, Cell("device", "inverter", above, below, Stroke.MAINS))
    if switched and mains:
        built_in = mains.choice("changeover") == "inverter"
        mark = Token(words.marks.of_mains["changeover"], strong=True)
        changes = tokens("changeover") if built_in else (mark, Token("changeover"))
        under = tokens("in the inverter") if built_in else ()
        cells.append(Cell("ac", "changeover", changes, under, Stroke.MAINS))
    else:
        cells.append(Cell("ac", "socket", tokens("inverter sockets"), (), Stroke.MAINS))
    return _off(reader, inverter, cells, "mains" if switched else "", "Inverter")


def _from_bar(reader: Reader, part: Part, device: Cell) -> list[Cell]:
    words = reader.writer
    fuse = words.fuse(part)
    plus = words.end_words(words.conductor(part, PLUS))
    start = Cell("start", above=plus, below=words.return_words(part))
    return [start, *((fuse,) if fuse else ()), words.wire(part), *words.isolators(part), device]


def _off(reader: Reader, part: Part, cells: list[Cell], end: str, heading: str) -> Run:
    plus = reader.writer.conductor(part, PLUS)
    start = reader.joined(plus.start, PLUS) if plus else ""
    if not start:
        cells = [cells[0]._replace(symbol="from"), *cells[1:]]
    return Run(part.id, tuple(cells), start=start, end=end, said=sentence(heading, cells))


def _sockets(reader: Reader) -> Run:
    cells = (Cell("outlet", "socket", tokens("shore sockets"), (), Stroke.MAINS),)
    return Run("sockets", cells, end="mains", said="Shore sockets.")


def _outlet(reader: Reader, circuit: Part) -> Run:
    words = reader.writer
    load = words.load(circuit)
    power = told(circuit, "power") or told(circuit, "current")
    above = (*load.above, *tokens(power), *load.below)
    cells = (Cell("outlet", load.symbol, above=above, after=Stroke.MAINS),)
    return Run(
        circuit.id, cells, end="inverter", before=Stroke.MAINS, circuit=True,
        end_words=tokens("inverter"), said=sentence("By the inverter", cells),
    )  # fmt: skip


def _mains_words(
    reader: Reader, mains: Part | None, inverter: Part | None
) -> Iterator[tuple[str, tuple[Item, ...]]]:
    unknown = reader.writer.unknown
    if mains:
        earth = {"yes": "protective earth joined to the chassis", "no": "no earth to the chassis"}
        said = earth.get(mains.choice("earth") or "", f"earth to the chassis: {unknown}")
        yield "earth", tokens(said)
        if mains.choice("changeover") == "nothing":
            yield "", tokens("nothing keeps shore and inverter apart")
    if inverter:
        bond = told(inverter, "neutral_bond", "not seen")
        yield "", tokens(f"neutral to earth: {bond}" if bond else "")
        residual = {
            "yes": "residual-current device on its outlets",
            "no": "no residual-current device on its outlets",
        }
        yield "", tokens(residual.get(inverter.choice("residual") or "", ""))


__all__ = ["MOST_OUTLETS", "mains_of", "sources_of"]
