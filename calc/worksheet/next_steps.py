"""Ways on from an answer, as data; `calc.render.next_steps` makes links of them."""

from dataclasses import dataclass


@dataclass(frozen=True)
class NextStep:
    """A way on: this worksheet with some fields' `texts` changed, or another `sheet` with them."""

    label: str
    texts: tuple[tuple[str, str], ...] = ()
    sheet: str = ""

    def __str__(self) -> str:
        changed = [f"{name}={text}" for name, text in self.texts]
        return f"{self.label} ({' '.join([self.sheet, *changed]).strip()})"
