"""A small drawing for each thing that may be wrong. Strokes take the colour of the words beside."""

from calc.render.html import Markup, el

_BULB = "M11 21h10M12 25h8M11.5 21c0-3-4.5-4.5-4.5-10a9 9 0 0 1 18 0c0 5.5-4.5 7-4.5 10"
_BATTERY = "M3 10h24v14H3zM7 10V7h4v3M19 10V7h4v3"
_STROKES = {
    "flickers": (_BULB, "M16 8l-3 4h6l-3 4", "M2 3l3 2M30 3l-3 2"),
    "hot": (
        "M4 26h11a6 6 0 1 0 0-8H4z",
        "M18 22h4",
        "M9 13c-3-3 3-5 0-9M16 12c-3-3 3-5 0-8M23 12c-3-3 3-5 0-9",
    ),
    "fuse": ("M1 16h6M25 16h6M7 10h18v12H7z", "M7 16h5M20 16h5M13 13l2 2M17 17l2 2"),
    "flat": (_BATTERY, "M6 21h4", "M14 16h2M18 16h2"),
    "charge": (_BATTERY, "M16 12l-4 5.5h5L14 22"),
    "inverter": ("M4 6h24v20H4z", "M8 16c2-6 4-6 6 0s4 6 6 0", "M24.5 10v5M24.5 18.5v.5"),
    "gauge": ("M4 24a12 12 0 1 1 24 0z", "M16 22l6-7", "M8 22h1M16 15v1M23 22h1"),
    "dead": ("M9 4v7M19 4v7M5 11h18v4a9 9 0 0 1-18 0zM14 24v6", "M25 20l6 6M31 20l-6 6"),
    "check": ("M7 5h18v24H7zM12 3h8v4h-8z", "M11 18l4 4 7-8"),
}


def symptom_svg(name: str) -> Markup:
    """Return the drawing of a symptom; its words stand beside it."""
    strokes = [el("path", d=d) for d in _STROKES[name]]
    return el("svg", *strokes, viewBox="0 0 32 32", aria_hidden="true", class_="lw-symptom")
