"""`lugwise van`: the review of a whole van in a terminal, its diagram and its lists as files.

    lugwise van marram.toml
    lugwise van marram.toml --inspection
    lugwise van marram.toml --json
    lugwise van marram.toml --diagram marram.svg --schedule circuits.csv --lists papers
    lugwise van marram.toml --circuits spreadsheet.csv
    lugwise van --new
    lugwise van --new --inspection
    lugwise van --template

It ends with status 0, or 1 if there is a stop or something is not proven, or 2 if a file cannot be
read or written: then every sentence is on standard error.
"""

import argparse
import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import calc
from calc.judge import Level
from calc.render.van_diagram import diagram_files
from calc.render.van_lists import document_html, hand_over_html, lists_html
from calc.van.circuits_csv import template, with_circuits
from calc.van.diagram import layout
from calc.van.files import read_van, write_van
from calc.van.inspection import inspection_list
from calc.van.listed import csv_of
from calc.van.lists import Lists, tables
from calc.van.patterns import worked_patterns
from calc.van.record import Van
from calc.van.review import Finding, Review, review
from calc.van.schedule import schedule
from calc.van.seasons import season_tables
from calc.van.start import start_file

MOST_BYTES = 10_000_000
_TITLES = {
    Level.STOP: "Stop",
    Level.CAUTION: "Caution",
    Level.ADVICE: "Advice",
    Level.NOTE: "Notes",
}
# What of a row of the schedule is plain data, in SI units.
_OF_A_ROW = (
    "current", "conductor", "parallel", "fuse", "family", "drop", "drop_share", "load_voltage",
    "ampacity", "fault_high", "fault_low",
)  # fmt: skip
FINE, STOPPED, UNREADABLE = 0, 1, 2


class Unusable(Exception):
    """A file that cannot be read or written; the sentence says why."""


def main(words: list[str]) -> int:
    """Review one van and write what is asked for; return the exit status."""
    parser = _parser()
    options = parser.parse_args(words)
    if options.new or options.template:
        print(start_file(inspection=options.inspection) if options.new else template(), end="")
        return FINE
    if not options.file:
        parser.print_usage(sys.stderr)
        return UNREADABLE
    try:
        van = read_van(text_of(options.file))
        if options.circuits:
            print(write_van(with_circuits(van, text_of(options.circuits))), end="")
            return FINE
        return _answer(van, options)
    except calc.InputError as error:
        for problem in error.problems:
            place = f"{problem.field}: " if problem.field else ""
            print(f"{place}{problem.message}", file=sys.stderr)
    except Unusable as sentence:
        print(sentence, file=sys.stderr)
    return UNREADABLE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="lugwise van", description="Review a van's file; write its diagram and its lists."
    )
    parser.add_argument("file", nargs="?", metavar="FILE", help="the van's file, TOML or JSON")
    parser.add_argument("--json", action="store_true", help="print review and schedule as data")
    parser.add_argument(
        "--inspection", action="store_true", help="print what is still to be looked at, in order"
    )
    parser.add_argument("--diagram", metavar="OUT.svg", help="write the diagram, a file each sheet")
    parser.add_argument("--schedule", metavar="OUT.csv", help="write the circuit schedule")
    parser.add_argument("--lists", metavar="DIR", help="write every list, and the papers to print")
    parser.add_argument(
        "--address", metavar="URL", default="", help="the site’s page of vans, for the square code"
    )
    parser.add_argument(
        "--circuits", metavar="IN.csv", help="print the van with the circuits of a spreadsheet"
    )
    parser.add_argument("--new", action="store_true", help="print a file to start from")
    parser.add_argument("--template", action="store_true", help="print a spreadsheet to fill in")
    return parser


def _answer(van: Van, options: argparse.Namespace) -> int:
    """Write what is asked for, print the review, and return the exit status."""
    found = review(van)
    if options.diagram:
        _write_diagram(van, found, Path(options.diagram))
    if options.schedule:
        table = next(one for one in tables(van) if one.id == "circuit-schedule")
        _write(Path(options.schedule), csv_of(table), "utf-8-sig")
    if options.lists:
        _write_lists(van, Path(options.lists), options.address)
    if options.json:
        print(json.dumps(as_data(van, found), ensure_ascii=False, indent=2))
    else:
        lines = _inspection(van) if options.inspection else as_lines(van, found)
        print("\n".join(lines))
    return STOPPED if found.stops else FINE


def text_of(name: str) -> str:
    """Return the text of a file. Raises Unusable."""
    path = Path(name)
    try:
        if path.stat().st_size > MOST_BYTES:
            raise Unusable(f"{name} is larger than 10 MB.")
        return path.read_text("utf-8")
    except UnicodeDecodeError:
        raise Unusable(f"{name} is not a text in UTF-8.") from None
    except OSError as error:
        raise Unusable(f"{name} cannot be read: {error.strerror}.") from None


def _write(path: Path, text: str, encoding: str = "utf-8") -> None:
    """Write a file whole. Raises Unusable."""
    try:
        path.write_text(text, encoding, newline="")
    except OSError as error:
        raise Unusable(f"{path} cannot be written: {error.strerror}.") from None


def _write_diagram(van: Van, found: Review, path: Path) -> None:
    """Write each sheet of the diagram: a second one beside the first as `name-2`."""
    drawing = layout(van, schedule(van), found)
    for number, text in enumerate(diagram_files(drawing), 1):
        _write(path if number == 1 else path.with_stem(f"{path.stem}-{number}"), text)


def _write_lists(van: Van, folder: Path, address: str) -> None:
    """Write each list as CSV, which spreadsheets know by its mark of byte order, and the papers.

    `address` is that of the site's page of vans: its link with the van in it is the square code.
    """
    own = Lists(van)
    every = (*own.tables, *season_tables(van))
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Unusable(f"{folder} cannot be made: {error.strerror}.") from None
    for table in (*every, own.papers.settings):
        _write(folder / f"{table.id}.csv", csv_of(table), "utf-8-sig")
    whole = document_html(van.name, lists_html(every), hand_over_html(own.papers, address))
    _write(folder / "papers.html", whole)


def as_lines(van: Van, found: Review) -> Iterator[str]:
    """Yield the review in lines for a terminal, the gravest first."""
    end = found.disposition
    signed = f" Signed by {end.signed_by}, {end.date}." if end.signed else " Not signed."
    yield f"{van.name}: {end.sentence}{signed if van.inspection else ''}"
    for level in _TITLES:
        own = [one for one in found.findings if one.level is level]
        if own:
            yield ""
            yield f"{_TITLES[level]} ({len(own)})"
        for one in own:
            yield from _finding(one)
    best = found.best
    if best:
        yield ""
        yield "Fix these first"
        yield from (f"  {mend.text} ({one.part_name}: {one.rule})" for one, mend in best)
    yield from _trips(van)


def _trips(van: Van) -> Iterator[str]:
    """Yield what comes of each pattern of use."""
    found = worked_patterns(van)
    if found:
        yield ""
        yield "Trips and seasons"
    yield from (f"  {one.part.name}: {one.sentence}" for one in found)


def _finding(one: Finding) -> Iterator[str]:
    proven = " [not proven]" if one.not_proven else ""
    yield f"  {one.part_name or 'the van'}: {one.sentence}{proven}"
    yield f"      {one.place or 'van'}  {one.rule}" + (f"  see {one.sheet}" if one.sheet else "")
    if one.text and one.text != one.sentence:
        yield f"      {one.text}"


def _inspection(van: Van) -> Iterator[str]:
    for number, stop in enumerate(inspection_list(van), 1):
        yield f"{number}. {stop.title}: {stop.do}"
        yield f"   {stop.caution}"
        for look in stop.looks:
            yield f"   [ ] {look.do}" + (" (must be proven)" if look.safety else "")


def as_data(van: Van, found: Review) -> dict[str, Any]:
    """Return review and schedule as plain data, in SI units."""
    end = found.disposition
    return {
        "van": van.name,
        "disposition": {
            "decision": str(end.decision), "sentence": end.sentence,
            "signed_by": end.signed_by, "date": end.date,
        },
        "findings": [
            {
                "rule": one.rule, "level": str(one.level), "not_proven": one.not_proven,
                "sentence": one.sentence, "text": one.text, "place": one.place,
                "part": one.part_name, "sheet": one.sheet, "inputs": dict(one.texts),
            }
            for one in found.findings
        ],
        "best": [{"finding": one.rule, "part": one.part_name, "mend": mend.text}
                 for one, mend in found.best],
        "schedule": [
            {"mark": row.mark, "part": row.part.id, "chosen": sorted(row.chosen),
             "level": str(row.level) if row.level else None, "rules": list(row.rules),
             "why": dict(row.why), **{name: getattr(row, name) for name in _OF_A_ROW}}
            for row in schedule(van).rows
        ],
    }  # fmt: skip
