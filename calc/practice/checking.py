"""Checking a reply: right, right enough, safe, a slip that is known, or how far off."""

from collections.abc import Mapping
from dataclasses import dataclass

from calc.practice.declared import Slip, Task
from calc.practice.reading import OtherKind, Value, in_words, read_reply
from calc.sheets import worksheet
from calc.units.quantities import Unit, from_base
from calc.units.shown import grouped, quantity_text, rounded, with_mm2, with_unit
from calc.worksheet import formula
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.fields import Problem

_SAME = 1e-9
_EXACT = 0.005  # as three digits show it: no word about a tolerance is needed
_POWERS = {10.0**n: f"{10 ** abs(n)}" for n in (-6, -3, -2, -1, 1, 2, 3, 6)}


@dataclass(frozen=True)
class Wrong:
    """A slip with the answer it leads to in one question, as value (SI) and as shown."""

    slip: Slip
    value: Value
    shown: str


@dataclass(frozen=True)
class Mark:
    """Whether a reply is right, what to say to it, and the slip that was recognised, if any.

    `counts` is False where the reply is of another kind than the question asks for: that is told,
    and is no try.
    """

    right: bool
    text: str
    slip: Slip | None = None
    counts: bool = True


def wrong_answers(answer: Answer, task: Task, inputs: Mapping[str, str]) -> tuple[Wrong, ...]:
    """Return the answer that each slip of `task` leads to.

    A slip whose answer is that of the right way, or of another slip, is left out: nobody could
    tell it.
    """
    found: list[Wrong] = []
    for slip in task.slips:
        wrong = _slipped(answer, task, slip, inputs)
        taken = [answer.values[task.asks], *(one.value for one in found)]
        if wrong and not any(_alike(wrong.value, value, 2 * task.tolerance) for value in taken):
            found.append(wrong)
    return tuple(found)


def within(task: Task) -> str:
    """Return the tolerance of a task as it is said: "3 %"."""
    return share_text(task.tolerance)


def share_text(share: float) -> str:
    """Return a share as it is said: "3 %"."""
    return with_unit(grouped(rounded(100 * share)), "%")


def _slipped(answer: Answer, task: Task, slip: Slip, inputs: Mapping[str, str]) -> Wrong | None:
    named = answer.worksheet.result(task.asks)
    if slip.reply:
        return Wrong(slip, slip.reply, with_mm2(in_words(named, slip.reply)))
    if slip.formula:
        if any(answer.values[name] is None for name in formula.names(slip.formula)):
            return None
        value = formula.work(slip.formula, answer.values)
        if named.kind is None:
            return Wrong(slip, value, with_mm2(in_words(named, str(value))))
        return Wrong(slip, value, quantity_text(value, named.kind, unit=named.unit_for(value)))
    changed = {name: _times(answer, name, share) for name, share in slip.times.items()}
    try:
        other = worksheet(answer.worksheet.id).work({**inputs, **changed, **slip.inputs})
    except InputError:
        return None
    return Wrong(slip, other.values[task.asks], other.shown[task.asks])


def _times(answer: Answer, name: str, share: float) -> str:
    """Return a given quantity times `share`, as text."""
    reading = answer.inputs[name]
    assert reading.kind and reading.unit and isinstance(reading.value, float)
    number = from_base(reading.value * share, reading.kind, reading.unit.name)
    return f"{number:.12g} {reading.unit.link}"


def _alike(one: Value, other: Value, share: float) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= max(share, _SAME) * abs(other)
    return one == other


def mark_reply(
    answer: Answer, task: Task, unit: Unit | None, slips: tuple[Wrong, ...], reply: str
) -> Mark:
    """Return the mark for `reply`; a bare number is taken in `unit`.

    Raises InputError, and OtherSizes where the question has to be answered in those first.
    """
    right, shown = answer.values[task.asks], answer.shown[task.asks]
    try:
        value = read_reply(answer, task, unit, reply)
    except OtherKind as other:
        return Mark(False, f"Not right. {other.text}", counts=False)
    except Problem as problem:
        raise InputError((problem,)) from None
    if _alike(value, right, task.tolerance):
        exact = _alike(value, right, _EXACT) or value == _as_shown(answer, task, unit)
        return Mark(True, f"Right: {shown}." + ("" if exact else f" {_near_enough(task)}"))
    known = next((one for one in slips if _alike(value, one.value, task.tolerance)), None)
    if is_safe(answer, task, value):
        told = f"Accepted: more than needed, which is safe. {shown} is enough."
        return Mark(True, f"{told} {known.slip.text}", known.slip) if known else Mark(True, told)
    if known:
        return Mark(False, f"Not right. {known.slip.text}", known.slip)
    return Mark(False, f"Not right. {_how_far(answer, task, value, right)}")


def _as_shown(answer: Answer, task: Task, unit: Unit | None) -> Value:
    """Return the right answer as it was rounded to be shown."""
    return read_reply(answer, task, unit, answer.shown[task.asks].partition(" (")[0])


def _near_enough(task: Task) -> str:
    return f"Yours is within {within(task)} of it, which is near enough."


def is_safe(answer: Answer, task: Task, value: Value) -> bool:
    """Return whether `value` is more than is needed, and by no more than the task allows."""
    right = answer.values[task.asks]
    if isinstance(value, float) and isinstance(right, float):
        return bool(task.oversize) and right < value <= right * (1 + task.oversize)
    steps = _sizes_over(task, value, right)
    return steps is not None and 0 < steps <= task.sizes_up


def _sizes_over(task: Task, value: Value, right: Value) -> int | None:
    """Return by how many sizes of one series `value` is larger than `right`; None if not of one."""
    listed = tuple(one.id for one in task.sizes.options) if task.sizes else task.choices
    if not task.sizes_up or value not in listed or right not in listed:
        return None
    series = [one for one in listed if one.split()[-1] == str(right).split()[-1]]
    return series.index(str(value)) - series.index(str(right)) if value in series else None


def _how_far(answer: Answer, task: Task, value: Value, right: Value) -> str:
    if right is None:
        return "With these values there is none."
    if value is None:
        return "There is one."
    if not (isinstance(value, float) and isinstance(right, float)):
        steps = _sizes_over(task, value, right)
        if steps is None:
            return "Calculate it step by step."
        return "That is safe, but far more than needed." if steps > 0 else "It is too small."
    if right and value and (value > 0) == (right > 0):
        for power, times in _POWERS.items():
            if _alike(value, right * power, 0.03):
                size = "large" if power > 1 else "small"
                return f"The digits are right, but it is {times} times too {size}: check the unit."
    return "It is too large." if value > right else "It is too small."
