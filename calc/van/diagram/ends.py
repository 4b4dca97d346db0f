"""Which bars of a van have a line, and which main cables hang together as one chain."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from functools import cached_property

from calc.van.diagram.said import sentence
from calc.van.diagram.scheme import Bar, Cell, Item, Token
from calc.van.diagram.words import Writer, tokens, told
from calc.van.net import BANK, MINUS, PLUS, Conductor, owner
from calc.van.record import Van

_PLUS_BARS, _MINUS_BARS = 5, 3  # with a line of their own; others are named by their marks
_LONGEST_CHAIN = 2
_PASSES = ("isolators", "shunt")
POLE = {PLUS: "+", MINUS: "−", "": "?"}  # of a cable nobody may have said the pole


@dataclass
class Ends:
    """Where the runs of one van start and end, and which of those places have a line."""

    writer: Writer

    @property
    def van(self) -> Van:
        return self.writer.van

    @cached_property
    def house(self) -> frozenset[str]:
        """The ids that stand for the bank."""
        return frozenset(
            (BANK, *(b.id for b in self.van.all("batteries") if b.choice("role") != "starter"))
        )

    def node(self, terminal: str, pole: str) -> str:
        """Return the name of what a terminal is joined to: the bank, or a part, with the pole."""
        id = owner(terminal)
        if not id:
            return ""
        part = self.van.by_id(id)
        return f"{BANK if id in self.house else part.id if part else id}{POLE[pole]}"

    @cached_property
    def cables(self) -> tuple[tuple[Conductor, ...], ...]:
        """The main cables, those joined by a shunt or an isolator alone as one chain."""
        own = [one for one in self.van.net.conductors if one.part.kind.id == "cables"]
        # A pair is drawn by its plus; its return is said in words.
        own = [one for one in own if one.pole != MINUS or one.part.choice("pole") == MINUS]
        met = Counter(
            self.node(end, one.pole)
            for one in self.van.net.conductors
            for end in (one.start, one.end)
        )
        after = {self.node(one.start, one.pole): one for one in own}
        ends = {self.node(one.end, one.pole) for one in own}
        chains: list[tuple[Conductor, ...]] = []
        taken: set[str] = set()

        def passes(node: str) -> bool:
            part = self.van.by_id(node[:-1])
            return bool(part and part.kind.id in _PASSES and met[node] == 2)

        for one in own:
            start = self.node(one.start, one.pole)
            if passes(start) and start in ends:
                continue
            chain = [one]
            while len(chain) < _LONGEST_CHAIN:
                node = self.node(chain[-1].end, one.pole)
                following = after.get(node)
                if not passes(node) or following is None or following in chain:
                    break
                chain.append(following)
            chains.append(tuple(chain))
            taken.update(part.part.id for part in chain)
        chains += [(one,) for one in own if one.part.id not in taken]
        return tuple(chains)

    @cached_property
    def inside(self) -> frozenset[str]:
        """The shunt and isolators that stand within a chain of cables."""
        return frozenset(owner(one.end) for chain in self.cables for one in chain[:-1])

    @cached_property
    def drawn(self) -> frozenset[str]:
        """The bars that have a line: the bank, and those that most runs are joined to."""
        used: Counter[str] = Counter()
        for one in self.van.net.conductors:
            used[self.node(one.start, one.pole)] += 1
            if one.part.kind.id == "cables":
                used[self.node(one.end, one.pole)] += 1
        for bar in self.van.all("bars"):
            pole = MINUS if bar.choice("pole") == MINUS else PLUS
            used[f"{bar.id}{POLE[pole]}"] += 1
        kinds = ("bars", "converters", *_PASSES)
        found: list[str] = []
        for pole, most in ((PLUS, _PLUS_BARS), (MINUS, _MINUS_BARS)):
            nodes = [node for node, _ in used.most_common() if node.endswith(POLE[pole])]
            fit = [
                node
                for node in nodes
                if (part := self.van.by_id(node[:-1]))
                and part.kind.id in kinds
                and part.id not in self.inside
            ]
            found += [f"{BANK}{POLE[pole]}", *fit[: most - 1]]
        return frozenset(found)

    def bars(self, pole: str) -> tuple[Bar, ...]:
        """Return the bars of a pole that have a line, the bank's terminals first."""
        sign = POLE[pole]
        bond = owner(self.van.net.chassis_bond)
        found = []
        for part in self.van.everything():
            node = f"{part.id}{sign}"
            if node not in self.drawn or part.kind.id == BANK:
                continue
            words = (
                Token(self.writer.marks.part(part), strong=True),
                *tokens(
                    part.name,
                    *(told(part, key) for key in ("rating", "place") if key in part.values),
                ),
                *self.writer.findings(part),
            )
            to_chassis = pole == MINUS and part.id == bond
            block = part.kind.id == "bars" and part.choice("kind") == "fuse-block"
            symbol = "negative" if pole == MINUS else "fuse-block" if block else ""
            found.append(self._bar(node, words, symbol, part.kind.id == "bars", to_chassis))
        if any(b.choice("role") != "starter" for b in self.van.all("batteries")):
            own = (Token("Bank", strong=True), *tokens("positive" if pole == PLUS else "negative"))
            flags = self.writer.findings(BANK, "management")
            words = (*own, *(flags if pole == PLUS else ()))
            at_bank = pole == MINUS and bond in self.house
            symbol = "negative" if pole == MINUS else ""
            found.insert(0, self._bar(f"{BANK}{sign}", words, symbol, False, at_bank))
        return tuple(found)

    def _bar(
        self, id: str, words: tuple[Item, ...], symbol: str, thick: bool, to_chassis: bool
    ) -> Bar:
        bond = ["joined to the chassis"] if to_chassis else []
        said = sentence("Bar", (Cell("", above=words[:2], below=words[2:]),), *bond)
        return Bar(id, words, thick, symbol, to_chassis, said)

    def joined(self, terminal: str, pole: str) -> str:
        """Return the bar with a line that a terminal is of, or nothing."""
        node = self.node(terminal, pole)
        return node if node in self.drawn and self._is_there(node) else ""

    def _is_there(self, node: str) -> bool:
        return node[:-1] != BANK or any(
            b.choice("role") != "starter" for b in self.van.all("batteries")
        )
