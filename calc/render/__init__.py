"""From a worksheet and its answer to HTML and SVG, at build and in the page alike."""

from calc.render.answer import answer_html
from calc.render.sheet import example_html, sheet_html

__all__ = ["answer_html", "example_html", "sheet_html"]
