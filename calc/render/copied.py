"""An answer as plain text, to be pasted into a message or a job sheet."""

from collections.abc import Iterator

from calc.render.answer import word_of
from calc.worksheet.answer import Answer

NOT_A_SUBSTITUTE = (
    "Not a substitute for the maker’s instructions, local rules or a qualified person."
)


def copied_text(answer: Answer, address: str) -> str:
    """Return question, verdict, results, inputs, cautions and the `address` that opens it again."""
    return "\n".join(_lines(answer, address))


def _lines(answer: Answer, address: str) -> Iterator[str]:
    sheet, values = answer.worksheet, answer.values
    yield sheet.question
    yield f"{word_of(answer.verdict)}: {answer.sentence}"
    yield ""
    for one in sheet.results:
        if values[one.id] is not None and not isinstance(values[one.id], tuple):
            yield f"{one.label}: {answer.shown[one.id]}"
    yield ""
    yield "For these values:"
    for field in sheet.fields:
        reading = answer.inputs[field.id]
        if reading.applies and reading.value is not None and not field.hidden:
            yield f"- {field.label}: {reading.text}"
    if answer.cautions:
        yield ""
        yield "Cautions:"
        yield from (f"- {one.text}" for one in answer.cautions)
    yield ""
    if address:
        yield address
    yield f"Lugwise. {NOT_A_SUBSTITUTE}"
