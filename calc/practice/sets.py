"""A set of questions for a class: of which worksheets, how many, and a seed that picks them.

    from calc.practice.sets import PracticeSet
    PracticeSet.of(["wire-drop", "fuse-choice"], 10, 42).questions()

The same choice gives the same questions in the page and in the terminal, on every machine. What
comes from a link comes from a stranger: everything is bounded, and nothing raises but InputError.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from urllib.parse import parse_qsl

from calc.practice import Question, question
from calc.practice.draw import Draw
from calc.sheets import IDS, practice_of
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

MOST = 40
LARGEST_SEED = 999_999
LONGEST_LINK = 4_000
LARGEST_NUMBER = 9_999_999
_NUMBERS = 9_000


def asking() -> tuple[str, ...]:
    """Return the ids of the worksheets that have questions, in reading order."""
    return tuple(name for name in IDS if _asks(name))


def _asks(name: str) -> bool:
    return name in IDS and bool(practice_of(name).tasks)


@dataclass(frozen=True)
class PracticeSet:
    """A set: the ids of its `sheets` in reading order, the `count` of its questions, its `seed`."""

    sheets: tuple[str, ...]
    count: int
    seed: int

    @classmethod
    def of(cls, sheets: Iterable[str], count: int | str, seed: int | str) -> "PracticeSet":
        """Return a set; the order in which `sheets` are named does not matter.

        Raises InputError with every problem: no such worksheet, none at all, a number out of range.
        """
        named = set(sheets)
        problems = []
        if unknown := sorted(name for name in named if not _asks(name)):
            listed = ", ".join(repr(name[:40]) for name in unknown[:3])
            problems.append(Problem("sheets", f"There are no questions for {listed}."))
        if not named:
            problems.append(Problem("sheets", "Pick at least one worksheet."))
        numbers = []
        for field, text, low, high in ("count", count, 1, MOST), ("seed", seed, 0, LARGEST_SEED):
            number = whole(text, low, high)
            if number is None:
                label = "Number of questions" if field == "count" else "Seed"
                says = f"{label} must be a whole number from {low} to {high}."
                problems.append(Problem(field, says))
            else:
                numbers.append(number)
        if problems:
            raise InputError(tuple(problems))
        return cls(tuple(name for name in IDS if name in named), *numbers)

    @classmethod
    def open(cls, fragment: str) -> "PracticeSet":
        """Return the set that a link holds. Raises InputError."""
        if len(fragment) > LONGEST_LINK:
            raise InputError((Problem("link", "This link is too long for a set."),))
        _, _, held = fragment.rpartition("#")
        try:
            parts = dict(parse_qsl(held, max_num_fields=8))
        except ValueError:
            parts = {}
        names = [name for name in parts.get("sheets", "").split(",") if name]
        return cls.of(names, parts.get("count", ""), parts.get("seed", ""))

    @property
    def link(self) -> str:
        """The fragment that opens this set."""
        return f"v=1&sheets={','.join(self.sheets)}&count={self.count}&seed={self.seed}"

    def numbers(self) -> tuple[tuple[str, int], ...]:
        """Return the worksheet and the number of each question: each worksheet in its turn."""
        first = {name: 1 + Draw.of(name, self.seed).number() % _NUMBERS for name in self.sheets}
        turns = (divmod(place, len(self.sheets)) for place in range(self.count))
        picked = ((self.sheets[which], turn) for turn, which in turns)
        return tuple((name, first[name] + turn) for name, turn in picked)

    def questions(self) -> tuple[Question, ...]:
        """Return the questions in their order."""
        return tuple(question(*one) for one in self.numbers())


def whole(text: object, low: int, high: int) -> int | None:
    """Return a whole number between `low` and `high` from a text or a number, None for all else."""
    digits = str(text).strip()
    if not (digits.isascii() and digits.isdigit() and len(digits) <= len(str(high))):
        return None
    return int(digits) if low <= int(digits) <= high else None
