"""What a practice set is declared from: tasks with plausible figures, and the slips people make."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from calc.worksheet.fields import Choice


@dataclass(frozen=True, kw_only=True)
class Slip:
    """A wrong turn and one sentence that puts it right.

    Its answer is a `formula` over the question's own values (SI; or the name of a text), or a fixed
    `reply`, or what the same sheet gives with other `inputs` and with some given ones `times` a
    number.
    """

    text: str
    formula: str = ""
    reply: str = ""
    inputs: Mapping[str, str] = field(default_factory=dict)
    times: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class Task:
    """One kind of question.

    `asks` is the result wanted, `text` the question with `{names}` of fields and of any other value
    that it tells. `draw` gives for each field the texts to choose from; a single one is fixed.
    `tolerance` is the share by which a number may be off. `choices` are the texts that an answer
    may be, or their ids where the result has words for ids; `sizes` is a field that reads conductor
    sizes, where the answer is one, and `other_sizes` are the inputs with which the same sheet
    answers in the other system of them, so that a reply may be of either. `or_none` lets "none" be
    an answer. Where more than is needed is safe too, `oversize` is the share by which a number may
    be larger, and `sizes_up` how many sizes of the list; such a reply is accepted with a word.
    `hint` takes the place of the one that is made from the sheet's own step.
    """

    asks: str
    text: str
    draw: Mapping[str, tuple[str, ...]]
    slips: tuple[Slip, ...] = ()
    tolerance: float = 0.03
    choices: tuple[str, ...] = ()
    sizes: Choice | None = None
    or_none: bool = False
    oversize: float = 0.0
    sizes_up: int = 0
    other_sizes: Mapping[str, str] = field(default_factory=dict)
    hint: str = ""


@dataclass(frozen=True, kw_only=True)
class Practice:
    """The tasks of one worksheet, or the reason why it has none."""

    tasks: tuple[Task, ...] = ()
    reason: str = ""

    @classmethod
    def none(cls, reason: str) -> Practice:
        """Return the practice of a worksheet that asks nothing, with the `reason` in a sentence."""
        return cls(reason=reason)


def steps(first: float, last: float, step: float, unit: str) -> tuple[str, ...]:
    """Return the texts of every number from `first` to `last`, both included, with its `unit`."""
    count = round((last - first) / step)
    return tuple(f"{first + step * n:g} {unit}" for n in range(count + 1))
