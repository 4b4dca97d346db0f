"""Links that carry a worksheet's inputs: readable text in the fragment, such as
`v=1&current=30A&length=12ft&conductor=8AWG`.

`v` is the number of the default set with which the link was made: what it leaves out means what it
meant then.

A link may come from a stranger: it is cut to size, read by the same grammar as the form, and what
is not understood is handed back as text to be shown.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from urllib.parse import quote_plus, unquote_plus

from calc.units.typed import isolated
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Field, ParsedInput
from calc.worksheet.rows import Rows

_LONGEST_FRAGMENT, _LONGEST_VALUE, _MOST_KEYS, _LONGEST_SHOWN = 4000, 200, 60, 40
_ESCAPED = 3  # characters of a link for one of a list, most of which are plain ones
_PLAIN = "/.-_~!'()*,:;@$"


@dataclass(frozen=True)
class Opened:
    """What a link holds: `texts` by field id, and `notes` on what was left out."""

    texts: Mapping[str, str]
    notes: tuple[str, ...]


def write(sheet: Declaration, texts: Mapping[str, str]) -> str:
    """Return the fragment, without `#`, from which `texts` by field id open again.

    What can be read is written in one form; what cannot is kept as typed, so that nothing is lost.
    """
    return write_readings(sheet, sheet.read(texts)[0], texts)


def write_plain(texts: Iterable[tuple[str, str]]) -> str:
    """Return a fragment of `texts` as they stand, for a sheet that need not be known here.

    It says no set of defaults, so the sheet of today opens it: it is for following, not keeping.
    """
    return "&".join(f"{name}={_quoted(text)}" for name, text in texts)


def write_changed(
    sheet: Declaration, readings: Mapping[str, ParsedInput], texts: Mapping[str, str]
) -> str:
    """Return the fragment of an answer's `readings` with other `texts` in some fields.

    An answer may offer a dozen ways on, each of them the whole state: what stays is not read anew.
    """
    rests = {name for field in sheet.fields for name in field.rests_on}
    if rests & set(texts):
        return write(sheet, {n: r.link for n, r in readings.items() if r.given} | dict(texts))
    changed = {
        name: sheet.field(name).read(text) if text else ParsedInput(None, "", given=False)
        for name, text in texts.items()
    }
    return write_readings(sheet, {**readings, **changed}, texts)


def write_readings(
    sheet: Declaration, readings: Mapping[str, ParsedInput], texts: Mapping[str, str]
) -> str:
    """Return the fragment of `readings`; a field without one stands as in `texts`."""
    parts = [f"v={sheet.default_set}"]
    for field in sheet.fields:
        reading = readings.get(field.id)
        if reading is None:
            text = texts.get(field.id, "")[: _longest(field)]
        elif reading.applies and (reading.given or not field.default_by):
            text = reading.link
        else:
            continue
        emptied = reading.given and reading.value is None if reading else field.id in texts
        if text or emptied:
            parts.append(f"{field.id}={_quoted(text)}")
    return "&".join(parts)


@lru_cache(256)
def _quoted(text: str) -> str:
    return quote_plus(text, safe=_PLAIN, errors="replace")


def open_fragment(sheet: Declaration, fragment: str) -> Opened:
    """Return what a link's `fragment` holds for `sheet`; never raises, whatever it holds."""
    texts: dict[str, str] = {}
    strange: list[str] = []
    notes: list[str] = []
    version = str(sheet.default_set)
    lists = sum(field.longest for field in sheet.fields if isinstance(field, Rows))
    fragment = fragment[: _LONGEST_FRAGMENT + _ESCAPED * lists]
    for part in fragment.lstrip("#").split("&")[:_MOST_KEYS]:
        key, _, raw = part.partition("=")
        name, text = (unquote_plus(side, errors="replace") for side in (key, raw))
        if name == "v":
            version = text
        elif named := [field for field in sheet.fields if field.id == name]:
            texts.setdefault(name, text[: _longest(named[0])])
        elif name:
            strange.append(name)
    number = int(version) if version.isascii() and version.isdecimal() and len(version) < 4 else 0
    if not 1 <= number <= sheet.default_set:
        notes.append("This link was made by another version of the sheet. Check each value.")
    else:
        older = {
            field.id: sheet.default_in(number, field.id, texts)
            for field in sheet.fields
            if field.id not in texts
        }
        changed = {name: text for name, text in older.items() if text is not None}
        readings = sheet.read(texts | changed)[0] if changed else {}
        texts |= {n: t for n, t in changed.items() if n not in readings or readings[n].applies}
    if strange:
        plain = ("".join(filter(str.isprintable, name)) for name in strange[:5])
        listed = ", ".join(f"“{isolated(name[:_LONGEST_SHOWN])}”" for name in plain)
        notes.append(
            f"The link has something this sheet does not know, which is ignored: {listed}."
        )
    return Opened(texts, tuple(notes))


def _longest(field: Field) -> int:
    return field.longest if isinstance(field, Rows) else _LONGEST_VALUE
