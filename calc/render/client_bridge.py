"""Client links in the page: made of a sheet's values, and checked when somebody opens one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from calc import InputError, find
from calc.render.advice import state_html
from calc.render.client import client_html
from calc.render.html import Markup, el, join
from calc.sheets import explanation_of
from calc.worksheet.answer import Answer
from calc.worksheet.client_link import Claim, read_client, sayings, write_client
from calc.worksheet.explain import Explained, explained
from calc.worksheet.link import open_fragment

Reply = dict[str, Any]

_NUMBER = re.compile(r"[\d\u2212(][^<>&\"]{0,31}")


def reply(asked: Mapping[str, Any], texts: Mapping[str, str]) -> Reply:
    """Return the reply to a request; `texts` are what a sheet's form holds."""
    return _ACTS[str(asked.get("do", ""))](asked, texts)


def _make(asked: Mapping[str, Any], texts: Mapping[str, str]) -> Reply:
    """Return the fragment that explains the answer to `texts`, or why there is none."""
    try:
        answer = _answer(str(asked["sheet"]), texts)
    except InputError as error:
        return {"problem": error.message}
    said = explained(answer, explanation_of(answer.worksheet.id))
    return {"fragment": write_client(answer.worksheet, answer.inputs, said)}


def _confirm(asked: Mapping[str, Any], _: Mapping[str, str]) -> Reply:
    """Work what a link holds anew, and say whether it agrees with what the link claims."""
    claim = read_client(str(asked["fragment"]))
    try:
        opened = open_fragment(find(claim.sheet), claim.inputs)
        answer = _answer(claim.sheet, opened.texts)
    except InputError as error:
        return {"problem": f"This cannot be checked: {error.message}"}
    how = explanation_of(claim.sheet)
    said = explained(answer, how)
    told = list(_differences(answer, said, claim))
    return {
        "html": client_html(answer, how, said),
        "agrees": not told,
        "told": state_html(told),
        "used": _used(answer),
    }


_ACTS: dict[str, Callable[[Mapping[str, Any], Mapping[str, str]], Reply]] = {
    "make": _make,
    "confirm": _confirm,
}


def _answer(name: str, texts: Mapping[str, str]) -> Answer:
    """Return the answer of the first stage, in which all that a client is told is there.

    Raises InputError.
    """
    sheet = find(name)
    readings, problems = sheet.read(texts)
    if problems:
        raise InputError(problems)
    answer = next(sheet.stages(readings))[1]
    assert answer is not None
    return answer


def _differences(answer: Answer, said: Explained, claim: Claim) -> Iterator[Markup]:
    """Yield what a link says otherwise than its values give."""
    sheet = answer.worksheet
    labels = {one.id: one.label for one in (*sheet.results, *sheet.intermediates)}
    for name, text in said.values.items():
        claimed = claim.values.get(name, "")
        if name not in answer.inputs and claimed != text:
            yield _told(labels[name], claimed, text)
    finding = (said.rule, said.found) != (claim.rule, claim.found)
    if finding or sayings(said) != claim.said:
        yield el("span", "The advice in the link was another one.")


def _told(label: str, claimed: str, text: str) -> Markup:
    if not claimed:
        return join(label, ": not in the link, calculated ", el("b", text), ".")
    seen = el("bdi", claimed) if _NUMBER.fullmatch(claimed) else "something else"
    return join(label, ": the link said ", seen, ", calculated ", el("b", text), ".")


def _used(answer: Answer) -> Markup:
    """Return the values that are not the defaults; how many others are the defaults."""
    usual = answer.worksheet.read({})[0]
    applying = [f for f in answer.worksheet.fields if answer.inputs[f.id].applies and not f.hidden]
    own = [f for f in applying if f.id not in usual or usual[f.id].text != answer.inputs[f.id].text]
    left = len(applying) - len(own)
    return join(
        el("dl", *(_row(f.label, answer.inputs[f.id].text) for f in own)) if own else None,
        el(
            "p", f"The other {left} values are usual ones." if own else "All values are usual ones."
        ),
    )


def _row(label: str, text: str) -> Markup:
    return el("div", el("dt", label), el("dd", el("bdi", text)))
