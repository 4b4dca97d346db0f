"""What a person types: one number and, if they like, one unit.

Our own small grammar, because a general parser reads `1,5 m` as 15 m, `100 ah` as attohours and
never comes back from `10**10**8`. It reads a decimal point or comma, digits of any script,
`3' 6"`, `1 h 20 min`, spaces as thousands; it refuses what could mean two things. Work is
bounded by length.
"""

import re
import unicodedata
from dataclasses import dataclass
from functools import cache
from math import inf

from calc.units.kinds import LENGTH, TIME
from calc.units.quantities import Kind, Unit

LONGEST = 40

_NUMBER = re.compile(r"([+-]?)([\d.,][\d., ]*)(?:[eE]([+-]?)(\d+))?\s*(.*)", re.DOTALL)
_FEET_AND_INCHES = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*(?:'|′|ft|feet|foot)\s*(\d+(?:[.,]\d+)?)\s*(?:\"|''|′′|in|inch|inches)?",
    re.IGNORECASE,
)
_HOURS_AND_MINUTES = re.compile(
    r"(\d{1,4})\s*(?:hours|hour|hrs|hr|h)\s*([0-5]?\d)\s*(?:minutes|minute|mins|min|m)?",
    re.IGNORECASE,
)
_THOUSANDS = re.compile(r"\d{1,3}(?: \d{3})+")
_GROUPED = re.compile(r"[1-9]\d{0,2},\d{3}")


_PAIRS = (
    (LENGTH, _FEET_AND_INCHES, "foot", "inch", 12),
    (TIME, _HOURS_AND_MINUTES, "hour", "minute", 60),
)
"""Kinds that are typed in two units, with how many of the second make one of the first."""


class Unreadable(ValueError):
    """Text that is not one number with one of the units.

    `why` is one of the reasons below; `instead` says how to write what is ambiguous.
    """

    def __init__(self, why: str, instead: str = "") -> None:
        super().__init__(why)
        self.why = why
        self.instead = instead


EMPTY, TOO_LONG, NOT_A_NUMBER, AMBIGUOUS, WRONG_UNIT = (
    "empty",
    "too long",
    "not a number",
    "ambiguous",
    "wrong unit",
)


@dataclass(frozen=True)
class Typed:
    """A number [`unit`] as typed; `digits` is the number's own text with a decimal point.

    Of feet with inches and hours with minutes, `digits` has both with their units.
    """

    number: float
    digits: str
    kind: Kind
    unit: Unit

    @property
    def is_pair(self) -> bool:
        """Whether it is of two units, such as feet and inches."""
        return " " in self.digits


def clean(text: str) -> str:
    """Return `text` with one form for each character that looks alike, and no invisible ones."""
    if text.isascii():
        return text.strip()  # nothing below can change it
    plain = []
    for character in unicodedata.normalize("NFKC", text):
        if unicodedata.category(character) == "Cf":
            continue
        digit = unicodedata.digit(character, None)
        plain.append(character if digit is None else str(digit))
    return "".join(plain).translate(_ALIKE).strip()


def isolated(text: str) -> str:
    """Return a text of someone's own so that letters from right to left turn nothing beside it."""
    if any(unicodedata.bidirectional(sign) in _LEFTWARDS for sign in text):
        return f"\N{FIRST STRONG ISOLATE}{text}\N{POP DIRECTIONAL ISOLATE}"
    return text


_LEFTWARDS = frozenset({"R", "AL", "AN"})
_ALIKE = str.maketrans({"−": "-", "–": "-", "٫": ".", "\u00a0": " ", "’": "'", "”": '"', "μ": "µ"})
_FOLDED_AWAY = re.compile(r"[\s·⋅*^_°-]|(?<!\d)\.|\.(?!\d)")


def fold(text: str) -> str:
    """Return `text` as it is compared: without case, spaces, hyphens, degree signs, loose dots."""
    return _FOLDED_AWAY.sub("", unicodedata.normalize("NFKC", text).casefold())


@cache
def _spellings(kind: Kind) -> dict[str, Unit]:
    found: dict[str, Unit] = {}
    for unit in kind.units:
        for spelling in (unit.symbol, unit.link, *unit.spellings):
            found.setdefault(fold(spelling), unit)
    return found


def find_unit(text: str, kind: Kind) -> Unit | None:
    """Return the unit of `kind` that `text` names, or None."""
    unit = _spellings(kind).get(fold(text))
    if unit is not None and text.lstrip().startswith("M") and unit.name.startswith("milli"):
        return None  # MW is never milliwatts
    if unit is not None and unit.name.startswith("mega") and text.lstrip().startswith("m"):
        return unit if fold(text).startswith("meg") else None  # and mΩ never megohms
    return unit


def read(text: str, kinds: tuple[Kind, ...], bare: tuple[Kind, Unit]) -> Typed:
    """Return what `text` says as a quantity of one of `kinds`.

    A number without a unit is taken in the kind and unit of `bare`.
    Raises Unreadable.
    """
    if len(text) > LONGEST:
        raise Unreadable(TOO_LONG)
    plain = clean(text)
    if not plain:
        raise Unreadable(EMPTY)
    for kind, pattern, first, second, share in _PAIRS:
        if kind in kinds and (pair := pattern.fullmatch(plain)):
            whole, part = (number.replace(",", ".") for number in pair.groups())
            larger, smaller = kind.unit(first), kind.unit(second)
            digits = f"{whole} {larger.link} {part} {smaller.link}"
            return Typed(float(whole) + float(part) / share, digits, kind, larger)
    match = _NUMBER.fullmatch(plain)
    if match is None:
        raise Unreadable(NOT_A_NUMBER)
    sign, body, exponent_sign, exponent, rest = match.groups()
    number, digits = _number(body.strip())
    if sign == "-":
        number, digits = -number, f"-{digits}"
    if exponent:
        number, digits = _scaled(number, digits, exponent_sign, exponent)
    if not rest.strip():
        return Typed(number, digits, *bare)
    for kind in kinds:
        if unit := find_unit(rest, kind):
            return Typed(number, digits, kind, unit)
    raise Unreadable(
        WRONG_UNIT if re.fullmatch(r"[^\W\d][^\d]{0,12}[23]?|%|°\w", rest) else NOT_A_NUMBER
    )


def is_bare(text: str) -> bool:
    """Return whether `text` is a number without a unit, so that a unit picked beside it holds."""
    match = _NUMBER.fullmatch(clean(text[:LONGEST]))
    return match is not None and not match.group(5).strip()


def _number(body: str) -> tuple[float, str]:
    if _THOUSANDS.fullmatch(body.split(".")[0].split(",")[0]):
        body = body.replace(" ", "")
    if " " in body:
        raise Unreadable(NOT_A_NUMBER)
    if _GROUPED.fullmatch(body):
        raise Unreadable(AMBIGUOUS, f"{body.replace(',', '')} or {body.replace(',', '.')}")
    if body.count(".") + body.count(",") > 1:
        raise Unreadable(AMBIGUOUS, "1234.5 or 1234,5")
    digits = body.replace(",", ".")
    if digits == ".":
        raise Unreadable(NOT_A_NUMBER)
    return float(digits), digits


def _scaled(number: float, digits: str, sign: str, exponent: str) -> tuple[float, str]:
    """Return the number times its power of ten; past two digits it is beyond any field's bounds."""
    if len(exponent) > 2:
        return (0.0 if sign == "-" or number == 0 else inf * number), f"{digits}e{sign}{exponent}"
    return number * 10.0 ** int(sign + exponent), f"{digits}e{sign}{exponent}"
