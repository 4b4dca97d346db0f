"""What a page about a van asks: a request as plain data in, a reply as plain data out.

A request names what to `do` and carries the van as `text`, as an earlier reply gave it; the page
keeps that text and knows nothing of what is in it. A reply that changes the van has its new `text`,
so that undoing is asking with an older one. Nothing is remembered here but what can be worked anew.
What was typed in vain stands in `drafts`, by place, and stays in its box until it is mended. What
cannot be done is told in `problems`, each with its place; nothing here raises on what a person
typed or a stranger sent.
"""

from __future__ import annotations

import json
from collections.abc import Callable

from calc.render import van_client, van_edit, van_papers, van_views
from calc.render.van_held import Asked, Reply, about, refusal, van_of
from calc.van.data import van_as_data, van_from_data
from calc.van.demos import DEMOS, demo
from calc.van.files import read_van, write_van
from calc.van.link import LONGEST, pack, packed_size, unpack
from calc.worksheet.answer import InputError

_LONGEST_START = 1000  # characters of the address that a link begins with


def reply(asked: Asked) -> Reply:
    """Return the reply to one request about a van."""
    try:
        act = ACTS.get(str(asked.get("do")))
        if act is None:
            raise refusal("This page does not know what was asked.")
        return act(asked)
    except InputError as error:
        told = [{"place": one.field, "message": one.message} for one in error.problems]
        return {"problems": told}


def _new(asked: Asked) -> Reply:
    kind = "inspection" if asked.get("inspection") else "plan"
    start = van_from_data({"format": 1, "van": {"kind": kind}})
    name = str(asked.get("name", "")).strip()
    return about(start.changed({"van.name": name}) if name else start)


def _open(asked: Asked) -> Reply:
    return about(read_van(str(asked.get("source", ""))))


def _unpack(asked: Asked) -> Reply:
    return about(unpack(str(asked.get("link", ""))))


def _demo(asked: Asked) -> Reply:
    name = str(asked.get("name"))
    if name not in DEMOS:
        raise refusal("There is no such sample.")
    return about(demo(name))


def _write(asked: Asked) -> Reply:
    """Write a file: its name, its type and what stands in it."""
    van, form = van_of(asked), str(asked.get("as"))
    name = "".join(c if c.isalnum() else "-" for c in van.name.lower()).strip("-") or "van"
    if form == "json":
        content = json.dumps(van_as_data(van), ensure_ascii=False, indent=2) + "\n"
        return {"file": f"{name}.json", "type": "application/json", "content": content}
    return {"file": f"{name}.toml", "type": "application/toml", "content": write_van(van)}


def _link(asked: Asked) -> Reply:
    """Write the van's link; one that is too long is not written, and its size told."""
    van = van_of(asked)
    start = str(asked.get("start", ""))[:_LONGEST_START]
    size = packed_size(van) + len(start)
    if size > LONGEST:
        raise refusal(
            f"The link would have {size} characters, and programs may cut one of more than"
            f" {LONGEST}. Send the file."
        )
    from calc.render import code as square

    link = start + pack(van)
    code = square.code_svg(link)
    says = f"The link has {len(link)} characters; up to {LONGEST} arrive whole."
    if not code:
        says += f" A square code holds {square.LONGEST}: this van is too large for one."
    return {"link": link, "code": code, "said": says}


ACTS: dict[str, Callable[[Asked], Reply]] = {
    "new": _new,
    "open": _open,
    "unpack": _unpack,
    "demo": _demo,
    "write": _write,
    "link": _link,
    **van_edit.ACTS,
    **van_views.ACTS,
    **van_papers.ACTS,
    **van_client.ACTS,
}
