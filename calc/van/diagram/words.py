"""The cells of a run: what stands beside a cable, a fuse, a switch, a load."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from calc.units.kinds import CURRENT, RATIO, VOLTAGE
from calc.units.quantities import Kind
from calc.units.shown import quantity_text, with_mm2
from calc.van.diagram.drawing import Shape, Stroke
from calc.van.diagram.scheme import Cell, Finding, Item, Token
from calc.van.marks import Marks, marks
from calc.van.net import BANK, MINUS, PLUS, Conductor, owner
from calc.van.record import CHASSIS, Part, Van
from calc.van.values import State
from calc.worksheet.fields import Choice

if TYPE_CHECKING:
    from calc.van.review import Review
    from calc.van.row import Row
    from calc.van.schedule import Schedule

CHOSEN = "*"
_SIGNS = {PLUS: "+", MINUS: "−", f"out-{PLUS}": "out +", f"out-{MINUS}": "out −"}
_LOADS = {
    "light": ("lamp", "light"),
    "fridge": ("fridge", "fridge"),
    "pump": ("pump", "pump"),
    "fan": ("fan", "fan"),
    "socket": ("socket", "socket"),
    "heater-fan": ("heater", "heater with fan"),
    "electronics": ("electronics", "electronics"),
    "resistive-heat": ("heater", "resistive heat"),
    "household-appliance": ("socket", "household appliance"),
    "cooler": ("fridge", "air conditioner"),
    "water-heater": ("heater", "water heater"),
    "motor": ("motor", "motor"),
    "hob": ("heater", "hob"),
    "other": ("load", "load"),
}
# Families of fuses in fewer words than a list has room for.
_FAMILIES = {
    "blade, regular": "blade",
    "blade, miniature": "mini blade",
    "blade, large": "large blade",
    "bolt-in strip, 30 mm": "strip 30 mm",
    "bolt-in strip, 51 mm": "strip 51 mm",
    "cartridge, class T": "class T",
    "cylinder, 10 by 38 mm": "10 × 38 mm",
    "panel breaker, magnetic": "panel breaker",
    "terminal-mount block": "terminal-mount",
}
_SHAPES = {"stop": Shape.STOP, "caution": Shape.CAUTION}


def told(part: Part, key: str, unseen: str = "") -> str:
    """Return what is to be read at a key: its text, or `unseen` where nobody could tell."""
    value = part[key]
    if value.known:
        said = with_mm2(value.reading.text if value.reading else value.text)
        if " (" in said and isinstance(part.kind.key(key).field, Choice):
            return short(said)
        return said
    return unseen if value.state is State.NOT_SEEN else ""


def tokens(*texts: str) -> tuple[Item, ...]:
    """Return the texts that say something."""
    return tuple(Token(text) for text in texts if text)


@dataclass
class Writer:
    """Writes the cells of a van's runs, with what its schedule and its review have worked out."""

    van: Van
    schedule: Schedule | None = None
    review: Review | None = None
    brief: bool = False  # without what the lists say too
    _placed: set[str] = field(default_factory=set)

    @cached_property
    def marks(self) -> Marks:
        """The marks of the van's parts."""
        return marks(self.van)

    def _row(self, part: Part) -> Row | None:
        return self.schedule.of(part) if self.schedule else None

    @cached_property
    def _findings(self) -> Mapping[str, tuple[Finding, ...]]:
        found: dict[str, list[Finding]] = {}
        for number, one in enumerate(self.review.findings if self.review else (), 1):
            shape = _SHAPES.get(str(one.level), Shape.NOTE)
            shape = Shape.NOT_PROVEN if one.not_proven else shape
            found.setdefault(one.part_id, []).append(Finding(shape, number))
        return {id: tuple(flags) for id, flags in found.items()}

    def findings(self, *parts: Part | str) -> tuple[Item, ...]:
        """Return the findings about some parts, or the parts with some ids."""
        ids = [one if isinstance(one, str) else one.id for one in parts]
        self._placed.update(ids)
        return tuple(flag for id in ids for flag in self._findings.get(id, ()))

    def findings_left(self) -> tuple[Item, ...]:
        """Return the findings that have not been placed beside a part."""
        left = (flags for id, flags in self._findings.items() if id not in self._placed)
        flags = sorted((flag for own in left for flag in own), key=lambda flag: flag.number)
        return tuple(flags)

    @cached_property
    def _by_pole(self) -> Mapping[tuple[str, str], Conductor]:
        return {(one.part.id, one.pole): one for one in self.van.net.conductors}

    @property
    def unknown(self) -> str:
        """What stands where nobody has said what is joined."""
        return "not seen" if self.van.inspection else "not said"

    def conductor(self, part: Part, pole: str) -> Conductor | None:
        """Return the conductor of a run at a pole."""
        return self._by_pole.get((part.id, pole))

    def terminal(self, text: str) -> str:
        """Return the mark of a terminal, or the name of a part that has none."""
        id, _, way = text.partition(".")
        way = _SIGNS.get(way, way)
        if id == BANK:
            return f"bank {way}".strip()
        mark = self.marks.of_parts.get(id)
        if mark:
            return f"{mark}:{way}" if way else mark
        part = self.van.by_id(id)
        return part.name if part else text

    def wire(self, part: Part, slot: str = "wire", extra: Iterable[Item] = ()) -> Cell:
        """Return the cell of a cable: its mark, size and length, its current and drop."""
        row = self._row(part)
        size = told(part, "conductor", "size not seen")
        star = ""
        if row is not None and row.conductor and "conductor" in row.chosen:
            size, star = with_mm2(str(row.conductor)), CHOSEN
        parallel = int(part.si("parallel") or (row.parallel if row else 0) or 1)
        size = f"{parallel} × {size}" if parallel > 1 and size else size
        above = (
            Token(self.marks.wire(part), strong=True),
            *tokens(f"{size}{star}" if size else "", told(part, "length", "length not seen")),
        )
        return Cell(slot, above=above, below=(*self._drop(part, row), *extra))

    def _drop(self, part: Part, row: Row | None) -> tuple[Item, ...]:
        own = told(part, "current") if "current" in part.values else ""
        if row is None:
            return tokens(own)
        current = shown(row.current, CURRENT) or own
        drop, share = shown(row.drop, VOLTAGE), shown(row.drop_share, RATIO)
        return tokens(current, f"{drop} ({share})" if drop and share else drop)

    def fuse(self, part: Part, slot: str = "fuse", far: bool = False) -> Cell | None:
        """Return the cell of a run's fuse; None where nothing is said of one."""
        row, value = self._row(part), part["fuse"]
        mark = self.marks.far_fuse(part) if far else self.marks.fuse(part)
        strong = Token(mark, strong=True)
        if value.state is State.NONE:
            return Cell(slot, "no-fuse", (strong,), tokens("no fuse"))
        if value.state is State.NOT_SEEN:
            return Cell(slot, "unseen-fuse", (strong,), tokens("not seen"))
        text, family, star = told(part, "fuse"), told(part, "fuse_family"), ""
        if row is not None and "fuse" in row.chosen:
            text, star = shown(row.fuse, CURRENT), CHOSEN
            family = family or str(row.family or "")
        if not text:
            return None
        kind = "breaker" if "breaker" in family else "fuse"
        return Cell(slot, kind, (strong, Token(f"{text}{star}")), tokens(_family(family)))

    def isolators(self, part: Part, slot: str = "switch") -> tuple[Cell, ...]:
        """Return the cell of the isolator or breaker in a run; it names any others there too."""
        found = [
            self.isolator(one, slot)
            for one in self.van.all("isolators")
            if owner(one.text("in_line")) == part.id
        ]
        if not found:
            return ()
        first, *more = found
        above = (*first.above, *(item for one in more for item in one.above))
        return (
            first._replace(above=above, below=(*first.below, *(i for o in more for i in o.below))),
        )

    def isolator(self, one: Part, slot: str = "switch", after: Stroke = Stroke.PLUS) -> Cell:
        """Return the cell of an isolator or breaker."""
        symbol = "breaker" if one.choice("kind") == "breaker" else "isolator"
        above = (Token(self.marks.part(one), strong=True), *tokens(told(one, "rating")))
        return Cell(slot, symbol, above, (*tokens(one.name), *self.findings(one)), after)

    def load(self, part: Part) -> Cell:
        """Return the cell of a circuit's load: its name, what it is and where, and its findings."""
        symbol, word = _LOADS.get(part.choice("load") or "", ("load", "load"))
        place = "" if self.brief else told(part, "place")
        known = word.partition(" ")[0] in part.name.lower()
        below = (*tokens("" if known else word, place), *self.findings(part))
        return Cell("load", symbol, tokens(part.name), below, Stroke.MINUS)

    def switch(self, part: Part) -> tuple[Cell, ...]:
        """Return the cell of a circuit's switch, where it has one."""
        kind = part.choice("switch")
        if kind not in ("in-reach", "hidden"):
            return ()
        words = (
            "hidden" if kind == "hidden" else "",
            "dimmer" if part.choice("dimmer") == "yes" else "",
        )
        above = (Token(self.marks.switch(part), strong=True),)
        return (Cell("switch2", "switch", above, tokens(*words)),)

    def start(self, conductor: Conductor | None) -> Cell:
        """Return the cell of the terminal that a run starts at."""
        return Cell("start", above=self.end_words(conductor))

    def end_words(self, conductor: Conductor | None) -> tuple[Item, ...]:
        """Return the mark of the terminal that a conductor starts at."""
        if conductor is None or not conductor.start:
            return tokens(self.unknown)
        star = CHOSEN if "start" in conductor.assumed else ""
        return (Token(f"{self.terminal(conductor.start)}{star}", strong=True),)

    def return_words(self, part: Part) -> tuple[Item, ...]:
        """Return where the negative of a run goes, in words."""
        minus = self.conductor(part, MINUS)
        if minus is None:
            return ()
        if minus.by_chassis:
            return tokens(f"− chassis, {minus.bond}" if minus.bond else "− chassis")
        if not minus.start:
            return tokens(f"− {self.unknown}")
        star = CHOSEN if "start" in minus.assumed else ""
        return tokens(f"− {self.terminal(minus.start)}{star}")

    def returned(self, part: Part) -> Cell:
        """Return the last cell of a circuit: where its negative ends."""
        minus = self.conductor(part, MINUS)
        if minus is not None and minus.by_chassis:
            return Cell("return", "chassis", tokens(minus.bond or "chassis"), (), Stroke.MINUS)
        if minus is None or not minus.start:
            return Cell("return", "to", tokens(self.unknown), (), Stroke.MINUS)
        star = CHOSEN if "start" in minus.assumed else ""
        to = Token(f"{self.terminal(minus.start)}{star}", strong=True)
        return Cell("return", "", (to,), (), Stroke.MINUS)


def shown(value: object, kind: Kind) -> str:
    """Return a worked value as a reader sees it; nothing where there is none."""
    if value is None:
        return ""
    return quantity_text(value, kind) if isinstance(value, float) else str(value)


def short(family: str) -> str:
    """Return the words of a choice without what stands in brackets after them."""
    return family.partition(" (")[0] if family != "not named" else ""


def _family(family: str) -> str:
    plain = short(family)
    return _FAMILIES.get(plain, plain)


__all__ = ["CHASSIS", "Writer", "shown", "tokens", "told"]
