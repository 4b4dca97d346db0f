"""Questions made from worksheets, for a course and for oneself.

    from calc.practice import mark, question
    asked = question("wire-drop", 7)
    asked.text, asked.link
    mark(asked, "0.5 V").says

The same number gives the same question on every machine, until the set is changed. Each question
is answered by the worksheet itself, so that its working and its cautions come with it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from calc.practice import hints
from calc.practice.checking import Mark as Mark
from calc.practice.checking import Wrong, mark_reply, share_text, within, wrong_answers
from calc.practice.declared import Task
from calc.practice.draw import Draw
from calc.practice.reading import OtherSizes, in_words
from calc.sheets import IDS, practice_of, worksheet
from calc.units.quantities import METRIC, US, Unit
from calc.worksheet.answer import Answer, InputError, Line
from calc.worksheet.declare import Output
from calc.worksheet.fields import Problem
from calc.worksheet.link import write

_TRIES, _FEW = 200, 6


@dataclass(frozen=True)
class Question:
    """A question as put: its `text`, the `inputs` it gives, and the `answer` worked from them.

    `link` is the fragment that opens the worked sheet; `unit` is the one that a bare number in a
    reply is taken in, None where the answer is a text; `slips` are the wrong answers known here.
    """

    worksheet: str
    number: int
    task: Task
    text: str
    inputs: Mapping[str, str]
    answer: Answer
    link: str
    unit: Unit | None
    slips: tuple[Wrong, ...]

    @property
    def asked(self) -> Output:
        """The result that is asked for."""
        return self.answer.worksheet.result(self.task.asks)

    @property
    def choices(self) -> tuple[str, ...]:
        """The answers to choose from in a reader's words, where they are few."""
        few = self.task.choices if len(self.task.choices) <= _FEW else ()
        return tuple(in_words(self.asked, choice) for choice in few)

    @property
    def hint(self) -> str:
        """How the answer follows from what, without the answer."""
        return hints.hint(self.answer, self.task)

    @property
    def steps(self) -> tuple[Line, ...]:
        """The steps of the working that lead to the answer, and no others."""
        return hints.leading(self.answer, self.task)

    @property
    def counts_as_right(self) -> str:
        """What is said beside the box of a reply: which units are read, and how near is right."""
        if self.asked.kind is None:
            either = "AWG or mm² will do. " if self.task.other_sizes else ""
            up = self.task.sizes_up
            return f"{either}Up to {up} sizes larger is accepted." if up else either.strip()
        none = "Write “none” if there is none. " if self.task.or_none else ""
        near = f"Within {within(self.task)} counts as right." if self.task.tolerance else ""
        over = self.task.oversize
        more = f" Up to {share_text(over)} more is accepted." if over else ""
        return f"{none}Any unit will do. {near or 'Only the exact value counts.'}{more}"

    @property
    def shown(self) -> str:
        """The right answer as a reader sees it."""
        return self.answer.shown[self.task.asks]


def question(name: str, number: int) -> Question:
    """Return question `number` of the worksheet `name`; numbers in a row go through its tasks.

    Raises InputError if there is no such worksheet, or none of its questions.
    """
    if name not in IDS:
        says = f"There is no worksheet {name!r}; there are {', '.join(IDS)}."
        raise InputError((Problem("worksheet", says),))
    practice = practice_of(name)
    if not practice.tasks:
        raise InputError((Problem("worksheet", practice.reason),))
    task = practice.tasks[number % len(practice.tasks)]
    draw = Draw.of(name, number)
    for _ in range(_TRIES):
        inputs = {field: draw.pick(texts) for field, texts in task.draw.items()}
        try:
            answer = worksheet(name).work(inputs)
        except InputError:
            continue
        value = answer.values[task.asks]
        if value in task.choices or (not task.choices and (value is not None or task.or_none)):
            return _asked(name, number, task, inputs, answer)
    raise ValueError(f"{name}: no values of {task.text!r} have an answer")


def mark(asked: Question, reply: str) -> Mark:
    """Return how right `reply` is, as typed. Raises InputError where it cannot be read."""
    try:
        return mark_reply(asked.answer, asked.task, asked.unit, asked.slips, reply)
    except OtherSizes as other:
        return _mark_in_other_sizes(asked, other.size)


def _mark_in_other_sizes(asked: Question, size: str) -> Mark:
    """Return the mark for a `size` of the other system, by what the sheet answers in that one.

    By their copper alone two sizes of two systems cannot be told apart: what is thinner than the
    right size of one may still do.
    """
    task = asked.task
    inputs = {**asked.inputs, **task.other_sizes}
    answer = worksheet(asked.worksheet).work(inputs)
    if answer.values[task.asks] is None:
        return Mark(False, "Not right. It is too small.")
    marked = mark_reply(answer, task, None, wrong_answers(answer, task, inputs), size)
    if not marked.right:
        return marked
    return replace(marked, text=f"{marked.text} In the sizes asked for: {asked.shown}.")


def _asked(
    name: str, number: int, task: Task, inputs: Mapping[str, str], answer: Answer
) -> Question:
    sheet = answer.worksheet
    given = {name: text for name, text in answer.shown.items() if name != task.asks}
    named = sheet.result(task.asks)
    value = answer.values[task.asks]
    unit = None
    if named.kind:
        systems = {r.unit.system for r in answer.inputs.values() if r.unit and r.applies}
        system = US if US in systems else METRIC
        own = named.unit_for(value or 0.0)
        unit = named.kind.unit(own) if own else named.kind.best_unit(value or 0.0, system)
    return Question(
        name,
        number,
        task,
        task.text.format_map(given),
        inputs,
        answer,
        write(sheet, inputs),
        unit,
        wrong_answers(answer, task, inputs),
    )
