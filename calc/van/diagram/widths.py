"""How wide the words of a diagram are."""

from calc.units import text_width
from calc.van.diagram.drawing import TEXT


def width(text: str, strong: bool = False) -> float:
    """Return how wide `text` is at most, in units of the drawing."""
    return text_width.width(text, TEXT, strong)
