"""A sheet in words, as a list."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from calc.van.diagram.scheme import Finding, Item, Run, Scheme


def said_of(
    scheme: Scheme, own: Sequence[Run], first: bool
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return what stands on a sheet as a list."""
    parts: list[tuple[str, Iterable[str]]] = []
    if first:
        mains = scheme.mains
        rows = mains.runs if mains else ()
        parts = [
            ("Sources", (run.said for one in scheme.sources for run in (one.run, *one.others))),
            ("Mains", (*(one.said for one in rows), *(mains.said if mains else ()))),
            ("Bank", (one.said for one in scheme.batteries)),
            ("Bars", (one.said for one in (*scheme.bars, *scheme.returns))),
            ("Main cables", (one.said for one in (*scheme.feeds, *scheme.minus_feeds))),
        ]
    parts.append(("Circuits", (one.said for one in own if one.circuit)))
    parts.append(("Further cables and parts", (one.said for one in own if not one.circuit)))
    if first:
        parts.append(("Notes", (_plain(one) for one in scheme.notes)))
    made = ((heading, tuple(one for one in entries if one)) for heading, entries in parts)
    return tuple((heading, entries) for heading, entries in made if entries)


def _plain(items: Iterable[Item]) -> str:
    return " ".join(
        f"{one.shape.replace('-', ' ')} {one.number}" if isinstance(one, Finding) else one.text
        for one in items
    )
