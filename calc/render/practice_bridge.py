"""What the page asks about practice: a question by its number, the check of a reply, a whole set.

It is fetched with the questions when somebody first practises. Nothing here raises on what a person
typed or a stranger sent.
"""

from collections.abc import Mapping
from typing import Any

from calc.practice import mark, question
from calc.practice.sets import LARGEST_NUMBER, PracticeSet, whole
from calc.render.practice import TRIES, mark_html, question_html
from calc.render.practice_set import set_html
from calc.worksheet.answer import InputError


def reply(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Return the reply to one request about practice; `problems` says what cannot be done."""
    try:
        return _ACTS[str(asked["do"])](asked)
    except InputError as error:
        problems = [{"field": p.field, "message": p.message} for p in error.problems]
        return {"problems": problems}


def _ask(asked: Mapping[str, Any]) -> dict[str, Any]:
    one = question(str(asked["sheet"])[:40], _number(asked))
    return {"html": question_html(one, str(asked["target"]))}


def _check(asked: Mapping[str, Any]) -> dict[str, Any]:
    one = question(str(asked["sheet"])[:40], _number(asked))
    marked = mark(one, str(asked["reply"])[:100])
    before = whole(asked.get("tries"), 0, 99) or 0
    tries = before + (not marked.right and marked.counts)
    return {
        "html": mark_html(marked, tries=tries),
        "right": marked.right,
        "tries": tries,
        "open": marked.right or tries >= TRIES,
    }


def _set(asked: Mapping[str, Any]) -> dict[str, Any]:
    if "link" in asked:
        chosen = PracticeSet.open(str(asked["link"]))
    else:
        sheets = [str(name) for name in asked["sheets"]]
        chosen = PracticeSet.of(sheets, str(asked["count"]), str(asked["seed"]))
    return {
        "html": set_html(chosen, str(asked["target"])),
        "link": chosen.link,
        "picked": {"sheets": chosen.sheets, "count": str(chosen.count), "seed": str(chosen.seed)},
    }


def _number(asked: Mapping[str, Any]) -> int:
    return whole(asked["nr"], 0, LARGEST_NUMBER) or 0


_ACTS = {"ask": _ask, "judge": _check, "set": _set}
