"""Marking a reply: right, a slip that is known, or how far off."""

from collections.abc import Mapping
from dataclasses import dataclass

from calc.practice.declared import Slip, Task
from calc.sheets import worksheet
from calc.units.quantities import Unit, from_base
from calc.units.shown import quantity_text, with_mm2
from calc.units.typed import fold
from calc.worksheet import formula
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.declare import Output
from calc.worksheet.fields import Choice, Problem, Quantity

NONE = ("none", "nothing", "nothing fits", "no", "not possible", "impossible", "–", "-")
_FAR = "1e90"  # beyond any answer, so that a reply is refused for its form only
_SAME = 1e-9
_POWERS = {10.0**n: f"{10 ** abs(n)}" for n in (-6, -3, -2, -1, 1, 2, 3, 6)}

Value = float | str | None


@dataclass(frozen=True)
class Wrong:
    """A slip with the answer it leads to in one question, as value (SI) and as shown."""

    slip: Slip
    value: Value
    shown: str


@dataclass(frozen=True)
class Mark:
    """Whether a reply is right, what to say to it, and the slip that was recognised, if any."""

    right: bool
    text: str
    slip: Slip | None = None


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


def in_words(named: Output, text: str) -> str:
    """Return a reader's words for a result that is a `text`: those for its id, or the text."""
    return named.words.get(text, text) if named.words else text


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
        return Wrong(slip, value, quantity_text(value, named.kind, unit=named.unit))
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
    """Return the mark for `reply`; a bare number is taken in `unit`. Raises InputError."""
    right = answer.values[task.asks]
    try:
        value = _read(answer, task, unit, reply)
    except Problem as problem:
        raise InputError((problem,)) from None
    if _alike(value, right, task.tolerance):
        return Mark(True, f"Right: {answer.shown[task.asks]}.")
    near = [wrong for wrong in slips if _alike(value, wrong.value, task.tolerance)]
    if near:
        return Mark(False, f"Not right. {near[0].slip.text}", near[0].slip)
    return Mark(False, f"Not right. {_how_far(value, right)}")


def _how_far(value: Value, right: Value) -> str:
    if right is None:
        return "With these values there is none."
    if value is None:
        return "There is one."
    if not (isinstance(value, float) and isinstance(right, float)):
        return "Calculate it step by step."
    if right and value and (value > 0) == (right > 0):
        for power, times in _POWERS.items():
            if _alike(value, right * power, 0.03):
                size = "large" if power > 1 else "small"
                return f"The digits are right, but it is {times} times too {size}: check the unit."
    return "It is too large." if value > right else "It is too small."


def _read(answer: Answer, task: Task, unit: Unit | None, reply: str) -> Value:
    """Return a reply's value [SI], or None for "none". Raises Problem."""
    named = answer.worksheet.result(task.asks)
    if named.kind is None:
        return _text(answer, task, reply)
    if task.or_none and fold(reply) in map(fold, NONE):
        return None
    assert unit is not None
    field = Quantity(
        id="reply",
        label="Reply",
        kinds=(named.kind,),
        low=f"-{_FAR} {unit.link}",
        high=f"{_FAR} {unit.link}",
        example=f"1 {unit.link}".strip(),
    )
    value = field.read(reply).value
    assert isinstance(value, float)
    return value


def _text(answer: Answer, task: Task, reply: str) -> Value:
    if task.or_none and fold(reply) in map(fold, NONE):
        return None
    if task.chosen_from:
        field = answer.worksheet.field(task.chosen_from)
        assert isinstance(field, Choice)
        try:
            return str(field.read(reply).value)
        except Problem as problem:
            raise Problem("reply", problem.message.replace(field.label, "Reply", 1)) from None
    named = answer.worksheet.result(task.asks)
    words = {choice: in_words(named, choice) for choice in task.choices}
    for choice, word in words.items():
        if fold(with_mm2(reply)) in (fold(with_mm2(choice)), fold(with_mm2(word))):
            return choice
    raise Problem("reply", f"Reply must be {' or '.join(words.values())}.")
