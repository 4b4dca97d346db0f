"""What is handed over with a van: markers, labels, charger settings, cards and the van's link."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from calc.van import cards
from calc.van.listed import ListTable

if TYPE_CHECKING:
    pass


@dataclass(frozen=True, kw_only=True)
class Label:
    """A label to cut out: its large `title`, the lines under it, and whether it warns."""

    title: str
    lines: tuple[str, ...]
    warns: bool = False


@dataclass(frozen=True, kw_only=True)
class HandOver:
    """The papers of a van. `fragment` is what its link holds after the #, as long as it is."""

    markers: tuple[Label, ...]
    labels: tuple[Label, ...]
    settings: ListTable
    cards: tuple[cards.Card, ...]
    fragment: str
