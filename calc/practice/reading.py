"""Reading a reply: any unit will do, and one of another kind is told, with no unit given away."""

from calc.electrical.conductors import conductor, series_of
from calc.practice.declared import Task
from calc.units.kinds import KINDS
from calc.units.quantities import Kind, Unit, to_base
from calc.units.shown import with_mm2
from calc.units.typed import (
    AMBIGUOUS,
    EMPTY,
    LONGEST,
    TOO_LONG,
    WRONG_UNIT,
    Typed,
    Unreadable,
    clean,
    fold,
    is_bare,
    read,
)
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Output
from calc.worksheet.fields import Choice, Problem

NONE = ("none", "nothing", "nothing fits", "no", "not possible", "impossible", "–", "-")
_FAR = 1e90  # beyond any answer
_FEW = 5  # names that a sentence can list
_NEITHER = "Your answer must be a number with a unit."

Value = float | str | None


class OtherKind(Exception):
    """A reply whose unit belongs to another kind of quantity than the question asks for."""

    def __init__(self, given: Kind, asked: Kind) -> None:
        super().__init__(given, asked)
        self.text = f"You gave {_named(given)}. The question asks for {_named(asked)}."


class OtherSizes(Exception):
    """A reply that is a conductor `size`, of the system that the question does not ask for."""

    def __init__(self, size: str) -> None:
        super().__init__(size)
        self.size = size


def in_words(named: Output, text: str) -> str:
    """Return a reader's words for a result that is a `text`: those for its id, or the text."""
    return named.words.get(text, text) if named.words else text


def read_reply(answer: Answer, task: Task, unit: Unit | None, reply: str) -> Value:
    """Return a reply's value [SI], or None for "none"; a bare number is taken in `unit`.

    Raises OtherKind or OtherSizes, and Problem where it cannot be read at all.
    """
    named = answer.worksheet.result(task.asks)
    if task.or_none and len(reply) <= LONGEST and fold(reply) in map(fold, NONE):
        return None
    if named.kind is None:
        if task.sizes:
            return _size(task.sizes, answer.values[task.asks], reply)
        return _text(answer, task, reply)
    assert unit is not None
    typed = _typed(named.kind, unit, reply)
    if not abs(typed.number) < _FAR:
        raise Problem("reply", "Your answer is too large a number.")
    return to_base(typed.number, typed.kind, typed.unit.name)


def _typed(kind: Kind, unit: Unit, reply: str) -> Typed:
    try:
        return read(reply, _alike(kind), (kind, unit))
    except Unreadable as unreadable:
        if unreadable.why == WRONG_UNIT and (other := _other(reply)):
            raise OtherKind(other, kind) from None
        raise Problem("reply", _refusal(unreadable)) from None


def _alike(kind: Kind) -> tuple[Kind, ...]:
    """Return `kind` and the others that measure the same: minutes for hours, watts for heat."""
    return (kind, *(other for other in KINDS if other.base == kind.base and other != kind))


def _other(reply: str) -> Kind | None:
    for kind in KINDS:
        try:
            read(reply, (kind,), (kind, kind.units[0]))
        except Unreadable:
            continue
        return kind
    return None


def _refusal(unreadable: Unreadable) -> str:
    if unreadable.why == EMPTY:
        return "Type your answer: a number and its unit."
    if unreadable.why == TOO_LONG:
        return f"Your answer must be at most {LONGEST} characters."
    if unreadable.why == AMBIGUOUS:
        return f"Your answer can be read two ways. Write {unreadable.instead}."
    return "That unit is not known here." if unreadable.why == WRONG_UNIT else _NEITHER


def _named(kind: Kind) -> str:
    return f"{'an' if kind.id[0] in 'aeiou' else 'a'} {kind.id}"


def _text(answer: Answer, task: Task, reply: str) -> Value:
    named = answer.worksheet.result(task.asks)
    words = {choice: in_words(named, choice) for choice in task.choices}
    if len(reply) <= max(LONGEST, *map(len, words.values())):
        full = fold(with_mm2(_in_full(reply, list(words))))
        for choice, word in words.items():
            if full in (fold(with_mm2(choice)), fold(with_mm2(word))):
                return choice
    raise _none_of(list(words.values()))


def _size(field: Choice, right: str, reply: str) -> str:
    """Return the conductor size that a reply names; a bare number is one of the system of `right`.

    Raises OtherSizes, and Problem where it is no size.
    """
    own = series_of(right)
    try:
        size = str(field.read(_in_full(reply, [one.name for one in own])).value)
    except Problem:
        raise _none_of([option.typed for option in field.options]) from None
    if conductor(size) not in own:
        raise OtherSizes(size)
    return size


def _none_of(names: list[str]) -> Problem:
    """Return what is said to a reply that is none of `names`; of many, which kind they are."""
    shown = [with_mm2(name) for name in names]
    if len(shown) > _FEW:
        return Problem("reply", f"Your answer must be a size such as {shown[0]} or {shown[-1]}.")
    return Problem("reply", f"Your answer must be {' or '.join(shown)}.")


def _in_full(reply: str, names: list[str]) -> str:
    """Return the name of a size by its bare number, where one alone begins with that number."""
    if len(reply) > LONGEST or not is_bare(reply):
        return reply
    number = fold(clean(reply).replace(",", "."))
    meant = [name for name in names if fold(name.partition(" ")[0]) == number]
    return meant[0] if len(meant) == 1 else reply
