"""Ways on from an answer, as data; `calc.render.next_steps` makes links of them."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Lead:
    """A way on to another `sheet` that an answer always has, with the figures that it takes along.

    `carry` pairs a field there with the id of an input or a result here, with a path of points into
    the result, or with a text of its own behind an equals sign. An input that is not known is left
    out. There is no such way where a result is none, where one of the inputs that it `needs` is not
    known or has no meaning, or where one of those that it is `without` is given.
    """

    label: str
    sheet: str
    carry: tuple[tuple[str, str], ...]
    needs: tuple[str, ...] = ()
    without: tuple[str, ...] = ()


def alike(*names: str) -> tuple[tuple[str, str], ...]:
    """Return what a lead carries from fields that have the same id there."""
    return tuple((name, name) for name in names)


@dataclass(frozen=True)
class NextStep:
    """A way on: this worksheet with some fields' `texts` changed, or another `sheet` with them."""

    label: str
    texts: tuple[tuple[str, str], ...] = ()
    sheet: str = ""

    def __str__(self) -> str:
        changed = [f"{name}={text}" for name, text in self.texts]
        return f"{self.label} ({' '.join([self.sheet, *changed]).strip()})"
