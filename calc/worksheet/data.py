"""An answer as plain data, for other programs."""

from dataclasses import asdict
from typing import Any

from calc.worksheet.answer import Answer


def as_data(answer: Answer) -> dict[str, Any]:
    """Return the answer as plain data: numbers with their units, texts and lists."""
    results: dict[str, Any] = {}
    for result in answer.worksheet.results:
        value = answer[result.id]
        if isinstance(value, list):
            results[result.id] = [part if isinstance(part, str) else asdict(part) for part in value]
        elif hasattr(value, "magnitude"):
            results[result.id] = {
                "value": value.magnitude,
                "unit": f"{value.units}",
                "shown": answer.shown[result.id],
            }
        else:
            results[result.id] = value
    return {
        "worksheet": answer.worksheet.id,
        "verdict": answer.verdict,
        "sentence": answer.sentence,
        "rule": answer.rule,
        "rules": list(answer.rules),
        "results": results,
        "inputs": {
            name: {"text": r.text, "given": r.given, "applies": r.applies}
            for name, r in answer.inputs.items()
        },
        "working": [
            {
                "label": x.label,
                "formula": x.formula,
                "numbers": x.numbers,
                "value": x.value,
                "says": x.text,
                "source": str(x.source) if x.source else None,
            }
            for x in answer.working
        ],
        "cautions": [said.text for said in answer.cautions],
        "notes": [said.text for said in answer.notes],
        "sources": [str(source) for source in answer.sources],
    }
