"""Numbers as a reader sees them: rounded for display only, to the nearest.

Only what one chooses by a number is rounded to the side that still works: a length to keep, a
setting, an opening to cut.
"""

import re
from contextvars import ContextVar
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal
from functools import cache

from calc.units.quantities import METRIC, Kind, from_base

NEAR, UP, DOWN = "near", "up", "down"
NARROW_SPACE = "\u202f"
NO_BREAK_SPACE = "\u00a0"
MINUS = "\u2212"

_MODES = {UP: ROUND_CEILING, DOWN: ROUND_FLOOR}
_SAME = Decimal("1e-9")
_LONG = 4  # figures of a whole part, all of which are shown
_CONSTANT = re.compile(r"(?<![\w.,])(?<!Class )(\d{1,2})\.(\d+)(?!\.?\d|\()")
"""A number in a sentence: that of a section has three figures, and a class its word before it."""
_PARTED = re.compile(
    r" (?<=\d )(?=(?:mm²|mm2|mm|cm²|cm|m²|m³|m|ft²|ft³|ft|in|kWp|kWh|kW|Wh|W|kJ|MJ|J|mV|V|kA|mA|Ah"
    r"|A|mΩ|µΩ|Ω|°C|°F|%|L|h|AWG|N|lbf|K|C|F|kg|g|s|ms|min|hours?|days?|gal|rpm)(?![\w’]))"
)

decimal_sign = ContextVar("decimal_sign", default=".")
"""What marks the decimals of a number that is shown: a point, or the comma that a reader types."""


def rounded(value: float, digits: int = 3, rounding: str = NEAR) -> str:
    """Return `value` with at least `digits` significant digits.

    A whole part of up to four figures is never cut; of a longer one no more is kept than `digits`
    or four figures say.
    `rounding` is UP or DOWN for a choice alone. A value that is already round (to one part in 1e9)
    is not pushed to the next number.
    """
    exact = Decimal(repr(float(value)))
    if not exact:
        return "0"
    for _ in range(2):  # rounding up 99.95 gains a digit in front, so the step is found again
        first = exact.adjusted()
        last = min(0, first - digits + 1) if first < _LONG else first - max(digits, _LONG) + 1
        step = _step(last)
        result = exact.quantize(step, ROUND_HALF_EVEN)
        if rounding != NEAR and abs(result - exact) > _SAME * abs(exact):
            result = exact.quantize(step, _MODES[rounding])
        if result.adjusted() == exact.adjusted() or not result:
            break
        exact = result
    text = f"{result:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


@cache
def _step(exponent: int) -> Decimal:
    return Decimal(1).scaleb(exponent)


def grouped(text: str) -> str:
    """Return a plain number's text as shown: groups of three from five figures on, a true minus."""
    sign, body = (MINUS, text[1:]) if text.startswith("-") else ("", text)
    whole, point, decimals = body.partition(".")
    if len(whole) > 4 and whole.isdigit():
        head = len(whole) % 3
        parts = ([whole[:head]] if head else []) + [
            whole[place : place + 3] for place in range(head, len(whole), 3)
        ]
        whole = NARROW_SPACE.join(parts)
    return f"{sign}{whole}{point and decimal_sign.get()}{decimals}"


def in_box(digits: str) -> str:
    """Return a number's own text as it stands in a box, with the reader's decimal sign.

    A point stays where three digits behind a comma could be read as thousands.
    """
    sign = decimal_sign.get()
    if sign == ".":
        return digits
    text = digits.replace(".", sign)
    return digits if re.fullmatch(r"[1-9]\d{0,2},\d{3}", text) else text


def with_sign(text: str) -> str:
    """Return a written sentence, its constants with the reader's decimal sign."""
    sign = decimal_sign.get()
    return text if sign == "." else _CONSTANT.sub(rf"\1{sign}\2", text)


def with_mm2(text: str) -> str:
    """Return text with the names of metric conductors as a reader writes them."""
    return text.replace(" mm2", f"{NO_BREAK_SPACE}mm²")


def kept_together(text: str) -> str:
    """Return a written text in which no line ends between a number and its unit."""
    return _PARTED.sub(NO_BREAK_SPACE, text) if " " in text else text


def with_unit(number: str, symbol: str) -> str:
    """Return a number's text and its unit's symbol as one phrase that does not break."""
    if not symbol:
        return number
    space = "" if symbol == "°" or symbol.startswith("'") else NO_BREAK_SPACE
    if number == "1" and symbol == "days":
        symbol = "day"
    return f"{number}{space}{symbol}"


def quantity_text(
    value: float,
    kind: Kind,
    *,
    digits: int = 3,
    rounding: str = NEAR,
    system: str = METRIC,
    unit: str = "",
) -> str:
    """Return `value` [base unit of `kind`] as shown, in `unit` or in the unit that reads best."""
    chosen = kind.unit(unit) if unit else kind.best_unit(value, system)
    number = from_base(value, kind, chosen.name)
    return with_unit(grouped(rounded(number, digits, rounding)), chosen.symbol)
