"""A worksheet asked for a part of a van, by names: what it fills, and what is still to be told."""

from __future__ import annotations

from collections.abc import Mapping

import calc
from calc.van.bind import Filled, filled, targets
from calc.van.record import Part, Van
from calc.van.why import why_not
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

_FEW = 12  # names that a sentence lists


def target(van: Van, sheet: str, name: str) -> Part | None:
    """Return the part with the id or the name `name` for which a worksheet opens; None: the van.

    Without a name it is the only one. Raises InputError.
    """
    found = targets(van, sheet)
    if name:
        own = [one for one in found if one is not None and name in (one.id, one.name)]
        if own:
            return own[0]
        raise InputError((Problem("circuit", f"{sheet} cannot open for {name!r}{_of(found)}."),))
    if len(found) == 1:
        return found[0]
    says = f"Say for which part {sheet} is to open{_of(found)}."
    raise InputError((Problem("circuit", says if found else f"This van has nothing for {sheet}."),))


def _of(found: tuple[Part | None, ...]) -> str:
    names = [one.id for one in found if one is not None]
    more = f" and {len(names) - _FEW} more" if len(names) > _FEW else ""
    return f": this van has {', '.join(names[:_FEW])}{more}" if names else ""


def inputs_for(
    van: Van, sheet: str, part: Part | None, typed: Mapping[str, str]
) -> tuple[Mapping[str, str], Filled]:
    """Return the texts of a worksheet for a part, those that are `typed` in place of the van's.

    And what the van fills. Raises InputError where the worksheet needs what the van does not tell
    and nobody typed.
    """
    found = filled(van, sheet, part)
    problems = tuple(
        Problem(
            name, f"{why_not(van, found.missing[name])}. Type it: {name}={_sample(sheet, name)}"
        )
        for name in found.lacking
        if name not in typed
    )
    if problems:
        raise InputError(problems)
    return {**found.texts, **typed}, found


def _sample(sheet: str, name: str) -> str:
    field = calc.find(sheet).field(name)
    text = field.default or getattr(field, "sample", "") or getattr(field, "example", "")
    return f'"{text}"'


def told(van: Van, sheet: str, found: Filled, typed: Mapping[str, str]) -> str:
    """Return which values came from the van, in a line for a terminal."""
    declared = calc.find(sheet)
    came = [
        f"{declared.field(name).label}: {text} ({found.places[name]})"
        for name, text in found.texts.items()
        if name in found.places and name not in typed
    ]
    return f"From the van {van.name}: {'; '.join(came)}."
