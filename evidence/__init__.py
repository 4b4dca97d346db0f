"""Checks against figures from outside the project, kept as data in the TOML files of this folder.

Tests hold us to them, and the page “How we check” is made from them.

A `[[case]]` is one check; a `[[series]]` is one check repeated down the rows of a printed table,
whose columns are put into its texts. Expected values are written as printed, and their last digit
sets the tolerance, so that nobody can loosen one quietly: a wider `tolerance` needs a `note`.

An expected value is one of
- `0.778 ohm`: that number, to half a unit in its last digit;
- `<= 3 %` (also `<`, `>`, `>=`): on that side of it, with no allowance but a float's last digits;
- `2.1 A to 2.4 A`: between the two, ends included;
- a plain text, where the answer is a text: the same text;
- a list, under a name ending in `_includes` or `_excludes`: all of it, or none of it, is listed.
`verdict` is the answer's verdict; `refused` names the field that must be refused.
"""

import operator
import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any, NamedTuple

HERE = Path(__file__).parent
COPY = "copy"
EVIDENCE = {
    "published": "printed by a source outside the project",
    COPY: "printed by the source of a table of ours: proves that we copied it, and no more",
    "by-hand": "worked by hand, or with a formula only, from stated figures",
    "other-program": "worked by another program",
    "exact": "true by definition, to the last digit",
    "from-memory": "a published figure as remembered; the source was not seen",
    "common-practice": "common practice, no source",
}
_SIDES = {"<=": operator.le, ">=": operator.ge, "<": operator.lt, ">": operator.gt}
_PRINTED = re.compile(r"(<=|>=|<|>|)\s*(-?\d+(?:\.\d+)?)\s*(\S*)")
_SLACK = 1e-9


@dataclass(frozen=True)
class Case:
    """One check: what is asked, what the source prints, and what kind of evidence that is."""

    id: str
    worksheet: str
    evidence: str
    source: str
    inputs: Mapping[str, str]
    expect: Mapping[str, Any] = field(default_factory=dict)
    not_expect: Mapping[str, Any] = field(default_factory=dict)
    tolerance: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        if self.evidence not in EVIDENCE:
            raise ValueError(f"{self.id}: no evidence is called {self.evidence!r}")
        if not self.source or not (self.expect or self.not_expect):
            raise ValueError(f"{self.id}: a case needs a source and something to expect")
        if self.tolerance and not self.note:
            raise ValueError(f"{self.id}: a tolerance of its own needs a note")


class Compared(NamedTuple):
    """Our value, how far it lies from the expected one, and whether they agree."""

    ours: str
    difference: str
    ok: bool


class Line(NamedTuple):
    """One line of a check as shown: a result's name, the expected value and the comparison."""

    name: str
    expected: str
    ours: str
    difference: str
    ok: bool


def load_cases() -> list[Case]:
    """Return every case of every file. Raises ValueError on a malformed or repeated one."""
    cases: dict[str, Case] = {}
    for path in sorted(HERE.glob("*.toml")):
        for case in _read(path):
            if case.id in cases:
                raise ValueError(f"{path.name}: {case.id} stands twice")
            cases[case.id] = case
    return list(cases.values())


def _read(path: Path) -> Iterator[Case]:
    data = tomllib.loads(path.read_text(encoding="utf-8"))
    if stray := set(data) - {"case", "series"}:
        raise ValueError(f"{path.name}: unknown {', '.join(sorted(stray))}")
    for entry in data.get("series", []):
        columns, rows = entry.pop("columns").split(), entry.pop("rows").split("\n")
        for row in filter(None, map(str.split, rows)):
            yield Case(**_filled(entry, dict(zip(columns, row, strict=True))))
    for entry in data.get("case", []):
        yield Case(**entry)


def _filled(entry: Any, row: Mapping[str, str]) -> Any:
    """Return `entry` with `{column}` replaced in every text by the row's cell."""
    if isinstance(entry, dict):
        return {key: _filled(value, row) for key, value in entry.items()}
    if isinstance(entry, list):
        return [_filled(value, row) for value in entry]
    return entry.format_map(row)


def lines(case: Case, answer: Any) -> Iterator[Line]:
    """Yield each comparison of `case` with an `answer` (its results by name, and its verdict)."""
    for wanted, table in ((True, case.expect), (False, case.not_expect)):
        for name, expected in table.items():
            result = re.sub("_(in|ex)cludes$", "", name)
            value = answer.verdict if name == "verdict" else answer[result]
            if name.endswith("cludes"):
                compared = _listed(expected, value, name.endswith("_includes"))
            else:
                compared = compare(expected, value, case.tolerance)
            text = expected if isinstance(expected, str) else "; ".join(expected)
            shown = text if wanted else f"not {text}"
            yield Line(name, shown, compared.ours, compared.difference, compared.ok is wanted)


def compare(expected: str, value: Any, tolerance: str = "") -> Compared:
    """Compare an answer's value, a quantity or a text, with an expected value as described above.

    `tolerance` is a share of the expected number, like `0.3 %`.
    """
    if not hasattr(value, "magnitude"):
        same = value == expected
        return Compared(str(value), "same" if same else "differs", same)
    ends = [_printed(part) for part in expected.split(" to ")]
    side, number, unit = ends[0]
    ours = float(value.to(unit).magnitude)
    digits = min(Decimal(end[1]).as_tuple().exponent for end in ends)
    text = f"{ours:.{max(0, 1 - digits)}f} {unit.replace('percent', '%')}"
    if side or len(ends) > 1:
        ok = _SIDES[side](ours, _with_slack(number, side)) if side else _between(ours, ends, value)
        return Compared(text, "within" if ok else "outside", ok)
    printed = float(number)
    allowed = abs(printed) * float(tolerance.rstrip("% ")) / 100 if tolerance else _half(number)
    ok = abs(ours - printed) <= allowed + _SLACK * abs(printed)
    share = (ours / printed - 1) * 100 if printed else 0.0
    return Compared(text, "none" if abs(share) < 1e-6 else f"{share:+.2g} %", ok)


def _printed(text: str) -> tuple[str, str, str]:
    match = _PRINTED.fullmatch(text.strip())
    if match is None:
        raise ValueError(f"{text!r} is not a number with a unit")
    side, number, unit = match.groups()
    return side, number, "percent" if unit == "%" else unit or "dimensionless"


def _half(number: str) -> float:
    """Return half a unit in the last digit of `number`."""
    return float(Decimal(5).scaleb(Decimal(number).as_tuple().exponent - 1))


def _with_slack(number: str, side: str) -> float:
    """Return the limit, moved by a float's last digits so that an equal value meets `<=` only."""
    inward = side in ("<", ">=")
    return float(number) * (1 + (-_SLACK if inward else _SLACK))


def _between(ours: float, ends: list[tuple[str, str, str]], value: Any) -> bool:
    low, high = (
        float(value._REGISTRY.Quantity(float(n), u).to(ends[0][2]).magnitude) for _, n, u in ends
    )
    return low - _SLACK * abs(low) <= ours <= high + _SLACK * abs(high)


def _listed(expected: list[str], value: list[str], wanted: bool) -> Compared:
    found = [item for item in expected if item in value]
    ok = len(found) == (len(expected) if wanted else 0)
    return Compared("; ".join(value) or "none", "same" if ok else "differs", ok)
