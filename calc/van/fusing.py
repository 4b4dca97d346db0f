"""The fuse of a run: as stated, or chosen where a plan leaves it open, and what would suit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from calc.electrical.protection import Protection
from calc.units.si import Amperes
from calc.van.bind import filled
from calc.van.bindings import BINDINGS
from calc.van.chosen import conductor_of, open_in_plan
from calc.van.from_fuses import NOT_NAMED
from calc.van.once import once_for_each_van
from calc.van.record import Part, Van
from calc.van.values import State
from calc.van.worked import Outcome, attempted

SHEET, DROP_SHEET = "fuse-choice", "wire-drop"


@dataclass(frozen=True, kw_only=True)
class Fused:
    """The fuse at the start of a run: its `rating` and `family`, None where they are not known.

    `none` tells that there is none. `chosen` holds what was chosen here, `fuse` or `family`.
    `answer` is the worksheet's, worked for the fuse that is there, with its `texts`; `suits` is
    what would suit, by the keys of a run.
    """

    rating: Amperes | None
    family: str | None
    none: bool
    chosen: frozenset[str]
    texts: Mapping[str, str]
    answer: Outcome | None
    suits: Mapping[str, str]


@once_for_each_van
def _kept(van: Van) -> dict[str, Fused]:
    return {}


def fused(van: Van, part: Part) -> Fused:
    """Return the fuse of a run or a battery."""
    kept = _kept(van)
    if part.id not in kept:
        kept[part.id] = _fused(van, part) if "conductor" in part.values else _as_stated(part)
    return kept[part.id]


def _as_stated(part: Part) -> Fused:
    family = part.choice("fuse_family")
    return Fused(
        rating=part.si("fuse"),
        family=None if family == NOT_NAMED else family,
        none=part["fuse"].state is State.NONE,
        chosen=frozenset(),
        texts={},
        answer=None,
        suits={},
    )


def with_conductor(van: Van, sheet: str, part: Part) -> tuple[dict[str, str], tuple[str, ...]]:
    """Return the texts of a worksheet for a run, its conductor chosen where that is open.

    And the places of what else is needed and not known.
    """
    found, laid = filled(van, sheet, part), conductor_of(van, part)
    texts = dict(found.texts)
    if (sheet, "conductor") not in BINDINGS:
        return texts, tuple(found.missing[one] for one in found.lacking)
    lacking = [one for one in found.lacking if one != "conductor"]
    places = tuple(found.missing[one] for one in lacking)
    if hasattr(laid, "name"):
        return {**texts, "conductor": laid.name}, places
    return texts, (laid.place, *places)


def _fused(van: Van, part: Part) -> Fused:
    stated = _as_stated(part)
    texts, lacking = with_conductor(van, SHEET, part)
    there: dict[str, str] = {}
    for name in ("fitted", "fitted_family", "fitted_voltage"):
        if name in texts:
            there[name] = texts.pop(name)
    free = attempted(SHEET, texts) if not lacking else None
    protection: Protection | None = free.result.protection if free else _by_drop(van, part)
    rating, family = stated.rating, stated.family
    chosen = set()
    if protection is not None and open_in_plan(van, part, "fuse") and protection.chosen:
        rating = protection.chosen
        chosen.add("fuse")
    if protection is not None and rating is not None and open_in_plan(van, part, "fuse_family"):
        family = _family(protection, rating)
        chosen |= {"family"} if family else set()
    answer = None
    if rating is not None and not lacking:
        there["fitted"] = part.text("fuse") or f"{rating:g} A"
        if family:
            there["fitted_family"] = family
        texts = {**texts, **there}
        answer = attempted(SHEET, texts)
    return Fused(
        rating=rating,
        family=family,
        none=stated.none,
        chosen=frozenset(chosen),
        texts=texts,
        answer=answer,
        suits=_suits(protection),
    )


def _by_drop(van: Van, part: Part) -> Protection | None:
    """Return the choice of a fuse while the fault is not known: the rating, of no family."""
    texts, lacking = with_conductor(van, DROP_SHEET, part)
    answer = attempted(DROP_SHEET, texts) if not lacking else None
    return answer.result.protection if answer else None


def _family(protection: Protection, rating: float) -> str | None:
    """Return the best family that makes a rating and breaks the fault; None if that is unknown."""
    if protection.fault_current is None:
        return None
    fitting = (one.family for one in protection.weighed if one.rating == rating)
    return next((family.name for family in fitting if family is not None), None)


def _suits(protection: Protection | None) -> Mapping[str, str]:
    if protection is None or protection.chosen is None:
        return {}
    family = _family(protection, protection.chosen)
    own = {"fuse": f"{protection.chosen:g} A"}
    return {**own, "fuse_family": family} if family else own
