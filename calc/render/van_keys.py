"""Every part of a van with its keys, for the page that tells how a van's file is written."""

from collections.abc import Iterator
from dataclasses import dataclass

from calc.van.keys import Key
from calc.van.parts import PARTS
from calc.worksheet.fields import Field


@dataclass(frozen=True, kw_only=True)
class DescribedKey:
    """A key as a writer of files needs it: its name, what reads it, and what it means left out."""

    id: str
    field: Field
    usual: str
    remarks: str


@dataclass(frozen=True, kw_only=True)
class DescribedPart:
    """A kind of part: its title, how its table is written, and its keys."""

    title: str
    table: str
    keys: tuple[DescribedKey, ...]


def described_parts() -> Iterator[DescribedPart]:
    """Yield every kind of part in the order of the file."""
    for kind in PARTS:
        yield DescribedPart(
            title=kind.title,
            table=f"[[{kind.id}]], {kind.most} at most" if kind.many else f"[{kind.id}]",
            keys=tuple(_described(key) for key in kind.keys),
        )


def _described(key: Key) -> DescribedKey:
    remarks = "; ".join(_remarks(key))
    return DescribedKey(id=key.id, field=key.field, usual=key.usual, remarks=remarks)


def _remarks(key: Key) -> Iterator[str]:
    if key.safety:
        yield "must be proven"
    if key.none:
        yield "may be “none”"
    if key.refers:
        yield f"names one of {', '.join(key.refers)}" if len(key.refers) < 8 else "names a part"
