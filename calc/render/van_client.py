"""A van explained to a client: the link that is made of its review, and the check of one.

Such as `van&v=1&van=q1Yq…&.say=1..0&:stops=2+stops&.p1=circuits.3&.n1=fridge&.r1=van.no-inlet`.
First the van itself, where there is room for it; then which sentences were chosen and what stands
in them. All of it may come from a stranger: it is a claim, until the van has been reviewed anew.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from urllib.parse import quote

from calc.judge import Level
from calc.render.advice import (
    bar_html,
    cautions_html,
    compared_html,
    neglect_html,
    sentence_html,
    state_html,
    why_html,
)
from calc.render.answer import verdict_html
from calc.render.html import Markup, el, join
from calc.render.van_held import Asked, Reply, van_of
from calc.render.van_views import review_of
from calc.van.advised import ADVICE, CAUTIONS, NEGLECT, Advised, Reason, advised, headlines
from calc.van.compared import LABELS
from calc.van.link import LONGEST, pack, unpack
from calc.van.record import KINDS, Van
from calc.worksheet.answer import InputError

ROOM = 700  # characters left for the sender's name and note
_PLAIN = "/.,-():;"
_OF_SENDER = re.compile(r"\.(?:by|note|on|mine)(?:=|$)")
_COUNT = re.compile(r"(\d{1,4})\+(?:stop|caution)s?")
_GRAVE = (Level.STOP, Level.CAUTION)


def link_of(van: Van, said: Advised, start: str = "") -> str:
    """Return the fragment, without `#`, that shows a client what was `said` of a van.

    It holds the van itself if the whole, behind its `start`, can then arrive whole.
    """
    claims = "&".join(claims_of(said))
    whole = f"van&{pack(van)}&{claims}"
    return whole if len(start) + len(whole) + ROOM <= LONGEST else f"van&{claims}"


def claims_of(said: Advised) -> list[str]:
    """Return what a link claims of a van, piece by piece."""
    pieces = [f".say={said.advice}..{said.neglect}"]
    pieces += [f":{name}={_written(text)}" for name, text in said.counts.items()]
    if said.bars:
        shares = {one.row: str(one.share) for one in said.bars}
        pieces.append(f".bar={'.'.join(shares.get(row, '') for row in range(max(shares) + 1))}")
        pieces += [f":bar{one.row}={_written(one.text)}" for one in said.bars]
    for number, one in enumerate(said.reasons, 1):
        pieces += [f".r{number}={_written(one.key)}", f".n{number}={_written(one.name)}"]
        if one.where:
            pieces.append(f".p{number}={one.where}")
        if one.found:
            pieces.append(f".f{number}={'~'.join(map(_written, one.found))}")
    return pieces


def _written(text: str) -> str:
    """Return a text as a link for a client has it."""
    escaped = quote(text, safe=_PLAIN).replace("_", "%5F").replace("~", "%7E")
    return escaped.replace("%C2%A0", "_").replace("%20", "+")


def van_html(said: Advised) -> Markup:
    """Return what is `said` of a reviewed van."""

    def put(name: str, _: int) -> Markup:
        return _of(said.reasons[0]) if name == "first" else el("b", said.counts[name])

    return frame_html(
        [verdict_html(said.level), Markup(" "), sentence_html(ADVICE[said.advice], put)],
        (el("li", *_reason(one)) for one in said.reasons),
        [el("p", NEGLECT[said.neglect])],
        [bar_html(LABELS[one.row], el("b", one.text), one.share) for one in said.bars],
    )


def frame_html(
    advice: Iterable[Markup],
    reasons: Iterable[Markup],
    neglect: Iterable[Markup],
    bars: Iterable[Markup],
) -> Markup:
    """Return advice, what is compared, reasons, what happens if nothing is done, and cautions."""
    return join(
        el("p", *advice, class_="lc-advice"),
        compared_html(bars),
        why_html(reasons),
        neglect_html(neglect),
        cautions_html(el("li", text) for text in CAUTIONS),
    )


def _reason(one: Reason) -> list[Markup | str | None]:
    said = sentence_html(headlines()[one.key], lambda _, n: el("b", el("bdi", one.found[n])))
    mend = join(" ", el("em", "Mend: ", el("bdi", one.mend))) if one.mend else None
    whose = [_of(one), ": "] if one.where or one.name else []
    return [*whose, said, mend]


def _of(one: Reason) -> Markup:
    """Return whose a finding is: our word for the part with its number, and the van's name."""
    kind, _, number = one.where.partition(".")
    ours = " ".join(filter(None, (KINDS[kind].to_client if kind else "", number)))
    own = "" if one.name.lower() == ours else f"“{one.name}”"
    return el("b", ours, " " if ours and own else None, el("bdi", own) if own else None)


def _make(asked: Asked) -> Reply:
    """Return the fragment that explains a van to a client."""
    van = van_of(asked)
    return {"fragment": link_of(van, advised(review_of(van)), str(asked.get("start", ""))[:1000])}


def _check(asked: Asked) -> Reply:
    """Review the van of a link anew, and say whether it agrees with what the link claims.

    The first reply says that there is `more`: weighing what to mend first takes as long again.
    """
    fragment = str(asked.get("fragment", ""))[:LONGEST]
    van_link, *claims = re.split(r"&(?=[.:])", fragment.removeprefix("van&"))
    try:
        van = _opened(van_link)
        found = review_of(van)
    except InputError as error:
        return {"problem": f"This cannot be checked: {error.message}"}
    if not asked.get("more"):
        return {"more": True}
    said = advised(found)
    claimed = [one for one in claims if not _OF_SENDER.match(one)]
    told = list(_differences(said, claimed))
    grave = [one for one in found.findings if one.level in _GRAVE]
    return {
        "html": van_html(said),
        "agrees": not told,
        "told": state_html(told),
        "used": el(
            "ul",
            *(
                el("li", verdict_html(one.level), " ", el("bdi", one.part_name, ": ", one.sentence))
                for one in grave
            ),
        )
        if grave
        else el("p", "No stop and no caution in what is written down."),
    }


@lru_cache(2)
def _opened(link: str) -> Van:
    return unpack(link)


def _differences(said: Advised, claimed: list[str]) -> Iterable[Markup]:
    """Yield what a link says otherwise than its van gives."""
    pieces = dict(one.partition("=")[::2] for one in claimed)
    for name, text in said.counts.items():
        given = pieces.get(f":{name}", "")
        if given != _written(text):
            number = _COUNT.fullmatch(given)
            other = number[1] if number else "something else"
            yield join(f"{name.capitalize()}: the link said {other}, calculated ", el("b", text))
    if sorted(claimed) != sorted(claims_of(said)):
        yield el("span", "The advice in the link was another one.")


ACTS = {"client-make": _make, "client-check": _check}
