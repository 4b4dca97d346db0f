"""What an entry of the bibliography holds."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Source:
    """A published source, or a plain statement that there is none.

    `place` is where in it; `read` tells how we came by it, since a paid standard is mostly known
    to us from reprints and quotations.
    """

    title: str
    place: str = ""
    read: str = ""

    def __str__(self) -> str:
        return f"{self.title}, {self.place}" if self.place else self.title
