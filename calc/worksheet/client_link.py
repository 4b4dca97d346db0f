"""Links for a client: what a sheet's link holds, with the numbers that were found and who sends it.

Such as `heater-night&v=2&loss=1.2kW&.say=5.012.1&.bar=4.100&:fuel_used=1.46_L`. First the sheet,
then its inputs but those that equal the numbered default set; after a point which sentences were
chosen, how long the bars are, and the deciding rule with its values in order; after a colon the
results by id. All of it may come from a stranger: it is a claim, until it has been worked anew.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import quote, unquote

from calc.worksheet.declare import Declaration
from calc.worksheet.explain import Explained
from calc.worksheet.fields import ParsedInput
from calc.worksheet.link import write_readings

LONGEST = 8000  # characters that are read
_LONGEST_TEXT, _MOST = 80, 40
_PLAIN = "/.,-():;"
_SHORT = (("%C2%A0", "_"), ("%C2%B7", "*"), ("%C2%B0", "!"), ("%20", "+"))
"""What the shown texts are full of, and what stands for it in a link."""
_OLD_HOURS = re.compile(r"(?<=[AW])·h\b")  # older links have A·h and W·h for today's Ah and Wh


@dataclass(frozen=True)
class Claim:
    """What a link says: a sheet, the fragment of its inputs, and what was found, by name."""

    sheet: str
    inputs: str
    values: Mapping[str, str]
    rule: str
    found: tuple[str, ...]
    said: str


def encoded(text: str) -> str:
    """Return a shown text as a link has it."""
    written = quote(text, safe=_PLAIN).replace("_", "%5F").replace("~", "%7E")
    for long, short in _SHORT:
        written = written.replace(long, short)
    return written


def decoded(written: str) -> str:
    """Return the text that a link has `written`."""
    for long, short in _SHORT:
        written = written.replace(short, long)
    return _OLD_HOURS.sub("h", unquote(written, errors="replace"))


def write_short(sheet: Declaration, readings: Mapping[str, ParsedInput]) -> str:
    """Return the fragment of `readings` without those that equal today's defaults."""
    usual = _usual(sheet, readings)
    kept = {name: r for name, r in readings.items() if not _same(r, usual.get(name))}
    return write_readings(sheet, kept, {})


def write_client(sheet: Declaration, readings: Mapping[str, ParsedInput], said: Explained) -> str:
    """Return the fragment, without `#`, that shows a client what was `said` of `readings`."""
    parts = [sheet.id, write_short(sheet, readings), f".say={sayings(said)}"]
    if any(share is not None for share in said.shares):
        shares = ("" if share is None else str(share) for share in said.shares)
        parts.append(f".bar={'.'.join(shares)}")
    if said.rule:
        parts += [f".rule={said.rule}", f".found={'~'.join(map(encoded, said.found))}"]
    parts += [
        f":{name}={encoded(text)}"
        for name, text in said.values.items()
        if name not in readings  # a value of the sheet stands among its inputs
    ]
    return "&".join(parts)


def sayings(said: Explained) -> str:
    """Return which sentences are said, by their places."""
    return f"{said.advice}.{''.join(map(str, said.reasons))}.{said.neglect}"


def read_client(fragment: str) -> Claim:
    """Return what a link claims; never raises, whatever it holds."""
    first, *parts = fragment[:LONGEST].lstrip("#").split("&")
    own = [part for part in parts if part[:1] not in (".", ":")]
    more = dict(part.partition("=")[::2] for part in parts if part[:1] in (".", ":"))
    values = {
        name[1:]: decoded(text)[:_LONGEST_TEXT]
        for name, text in list(more.items())[:_MOST]
        if name.startswith(":")
    }
    found = more.get(".found", "").split("~")[:_MOST]
    return Claim(
        sheet=first if re.fullmatch(r"[a-z-]{1,40}", first) else "",
        inputs="&".join(own),
        values=values,
        rule=more.get(".rule", "")[:_LONGEST_TEXT],
        found=tuple(decoded(text)[:_LONGEST_TEXT] for text in found) if ".found" in more else (),
        said=more.get(".say", "")[:_LONGEST_TEXT],
    )


def _usual(sheet: Declaration, readings: Mapping[str, ParsedInput]) -> dict[str, ParsedInput]:
    """Return the default of each field, beside the choices that `readings` hold."""
    rests = {name for field in sheet.fields for name in field.rests_on}
    texts = {name: readings[name].link for name in rests if name in readings}
    usual = sheet.read(texts)[0]
    for name in texts:
        others = {other: text for other, text in texts.items() if other != name}
        own = sheet.read(others)[0].get(name)
        if own:
            usual[name] = own
    return usual


def _same(reading: ParsedInput, usual: ParsedInput | None) -> bool:
    return usual is not None and (reading.value, reading.link) == (usual.value, usual.link)
