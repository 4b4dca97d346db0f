"""The symbols of a van's diagram, of the kind of IEC 60617 and drawn by us.

Each starts at the left end of its line, at the height 0 of the line, and keeps to the room that
`calc.van.diagram.symbols` gives it. Three paths: what is stroked on a ground of paper, what is
stroked alone, and what is filled.
"""

from typing import NamedTuple


class Paths(NamedTuple):
    """The paths of a symbol."""

    ground: str = ""
    stroke: str = ""
    solid: str = ""


_BLADE = "M0 0H8L27-11M28 0H36"
_ROUND = "M1 0A14 14 0 1 0 29 0A14 14 0 1 0 1 0Z"
_BOX, _ARROW = "M1-17H31V17H1Z", "M32-5L38 0L32 5Z"
_DC = "M5-11H13M5-7H13"
PATHS: dict[str, Paths] = {
    "fuse": Paths("M2-6H30V6H2Z", "M0 0H32"),
    "no-fuse": Paths("", "M0 0H32M8-6L14 6M18-6L24 6"),
    "unseen-fuse": Paths(
        "M2-8H30V8H2Z", "M0 0H2M30 0H32M13-3Q13-6 16-6T19-3Q19-1 16 0V2M16 4.5V5.5"
    ),
    "fuse-block": Paths("M6-7H24V7H6Z", "M0 0H30M2-8V8"),
    "breaker": Paths("", f"{_BLADE}M25-3L31 3M31-3L25 3"),
    "breaker-2": Paths("", f"{_BLADE}M25-3L31 3M31-3L25 3M13-10L19 3M18-13L24 0"),
    "isolator": Paths("", f"{_BLADE}M28-6V6"),
    "switch": Paths("", _BLADE, "M5 0A3 3 0 1 0 11 0A3 3 0 1 0 5 0Z"),
    "residual": Paths("", f"{_BLADE}M2 0A3.5 11 0 1 0 9 0A3.5 11 0 1 0 2 0Z"),
    "changeover": Paths(
        "", "M0 0H7M40 0H33M20 16V9L9 1",
        "M5 0A3 3 0 1 0 11 0A3 3 0 1 0 5 0ZM29 0A3 3 0 1 0 35 0A3 3 0 1 0 29 0Z",
    ),
    "battery": Paths("", "M0 0H14M14-8V8M15-8V8M22-16V16M22 0H36M27-11H34M30.5-14.5V-7.5"),
    "panel": Paths(
        "M1-16H41V16H1Z",
        "M5-12L12-5M12-9.5V-5H7.5M14-13L21-6M21-10.5V-6H16.5M26-6V12M31-1V7M14 3H26M31 3H41",
    ),
    "generator": Paths("M1 0A17 17 0 1 0 35 0A17 17 0 1 0 1 0Z", "M24-5A8 8 0 1 0 25.5 2H19"),
    "regulator": Paths(
        _BOX,
        "M1 17L31-17M4-13L9-8M9-11.5V-8H5.5M11-14L16-9M16-12.5V-9H12.5M19 8H27M19 12H27",
        _ARROW,
    ),
    "charger": Paths(
        "M7-17H37V17H7Z", "M7 17L37-17M11-11H19M11-7H19M24 9Q26.5 3 29 9T34 9", "M6-5L0 0L6 5Z"
    ),
    "dc-charger": Paths(_BOX, f"M1 17L31-17{_DC}M19 8H27M19 12H27", _ARROW),
    "relay": Paths("M12 6H26V15H12Z", "M0 0H8L27-11M28 0H38M19 6V-5"),
    "inverter": Paths(_BOX, f"M1 17L31-17{_DC}M18 9Q20.5 3 23 9T28 9", _ARROW),
    "shunt": Paths("M6-6H34V6H6Z", "M0 0H6M34 0H40M12 6V11M28 6V11"),
    "inlet": Paths(
        "M2 0A14 14 0 1 0 30 0A14 14 0 1 0 2 0Z", "M30 0H36",
        "M8 0A2 2 0 1 0 12 0A2 2 0 1 0 8 0ZM20 0A2 2 0 1 0 24 0A2 2 0 1 0 20 0Z"
        "M14-7A2 2 0 1 0 18-7A2 2 0 1 0 14-7Z",
    ),
    "socket": Paths("", "M0 0H14M26-12A12 12 0 0 0 26 12"),
    "lamp": Paths(_ROUND, "M5-10L25 10M25-10L5 10"),
    "motor": Paths(_ROUND, "M9 6V-6L15 2L21-6V6"),
    "pump": Paths(_ROUND, "M7-11L29 0L7 11"),
    "fan": Paths(_ROUND, "M15 0C11-9 4-8 5-3S11 3 15 0C19 9 26 8 25 3S19-3 15 0"),
    "heater": Paths("M2-9H34V9H2Z", "M0 0H2M34 0H36M10-9V9M18-9V9M26-9V9"),
    "fridge": Paths("M2-14H30V14H2Z", "M0 0H2M30 0H32M16-9V9M8-4.5L24 4.5M24-4.5L8 4.5"),
    "electronics": Paths("M6-12H26V12H6Z", "M0 0H6M26 0H32M2-7H6M2 7H6M26-7H30M26 7H30"),
    "load": Paths("M1-13H31V13H1Z", ""),
    "chassis": Paths("", "M0 0H13V4M3 4H23M6 4L2 12M13 4L9 12M20 4L16 12"),
    "earth": Paths("M1 0A12 12 0 1 0 25 0A12 12 0 1 0 1 0Z", "M13-9V-1M5-1H21M8 3H18M11 7H15"),
    "negative": Paths("M1 0A9 9 0 1 0 19 0A9 9 0 1 0 1 0Z", "M6 0H14"),
    "to": Paths("", "M0 0H10", "M10-6L18 0L10 6Z"),
    "from": Paths("", "M8 0H18", "M0-6L8 0L0 6Z"),
}  # fmt: skip
"""Every symbol's paths by its name."""
