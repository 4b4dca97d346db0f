"""Links that carry a worksheet's inputs: readable text in the fragment, such as
`v=1&current=30A&length=12ft&conductor=8AWG`.

A link may come from a stranger: it is cut to size, read by the same grammar as the form, and what
is not understood is handed back as text to be shown.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import quote, unquote_plus

from calc.worksheet import Worksheet

VERSION = "1"
_LONGEST_FRAGMENT, _LONGEST_VALUE, _MOST_KEYS, _LONGEST_SHOWN = 4000, 200, 60, 40
_PLAIN = "/.-_~!'()*,:;@$"


@dataclass(frozen=True)
class Opened:
    """What a link holds: `texts` by field id, and `notes` on what was left out."""

    texts: Mapping[str, str]
    notes: tuple[str, ...]


def write(sheet: Worksheet, texts: Mapping[str, str]) -> str:
    """Return the fragment, without `#`, from which `texts` by field id open again.

    What can be read is written in one form; what cannot is kept as typed, so that nothing is lost.
    """
    readings, _ = sheet.read(texts)
    parts = [f"v={VERSION}"]
    for field in sheet.fields:
        reading = readings.get(field.id)
        if reading is None:
            text = texts.get(field.id, "")[:_LONGEST_VALUE]
        elif reading.applies and (reading.given or not field.usual):
            text = reading.link
        else:
            continue
        if text:
            parts.append(f"{field.id}={quote(text, safe=_PLAIN)}")
    return "&".join(parts)


def open_fragment(sheet: Worksheet, fragment: str) -> Opened:
    """Return what a link's `fragment` holds for `sheet`; never raises, whatever it holds."""
    texts: dict[str, str] = {}
    strange: list[str] = []
    notes: list[str] = []
    version = VERSION
    for part in fragment[:_LONGEST_FRAGMENT].lstrip("#").split("&")[:_MOST_KEYS]:
        key, _, raw = part.partition("=")
        name, text = (unquote_plus(side, errors="replace") for side in (key, raw))
        if name == "v":
            version = text
        elif any(field.id == name for field in sheet.fields):
            texts.setdefault(name, text[:_LONGEST_VALUE])
        elif name:
            strange.append(name)
    if version != VERSION:
        notes.append("This link was made by another version of the sheet. Check each figure.")
    if strange:
        listed = ", ".join(f"“{name[:_LONGEST_SHOWN]}”" for name in strange[:5])
        notes.append(
            f"The link holds something this sheet does not know, and it is left out: {listed}."
        )
    return Opened(texts, tuple(notes))
