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

import calc
from calc.judge import Level
from calc.render.van_lists import document_html, hand_over_html, lists_html
from calc.van.circuits_csv import template, with_circuits
from calc.van.files import read_van, write_van
from calc.van.handover import hand_over
from calc.van.listed import csv_of
from calc.van.lists import tables
from calc.van.record import Van
from calc.van.review import Finding, Review, review
from calc.van.start import start_file

MOST_BYTES = 10_000_000
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
        van = read_van(_text_of(options.file))
        if options.circuits:
            print(write_van(with_circuits(van, _text_of(options.circuits))), end="")
            return FINE
        return _answer(van, options)
    except calc.InputError as error:
        for problem in error.problems:
            place = f"{problem.field}: " if problem.field else ""
            print(f"{place}{problem.message}", file=sys.stderr)
    except Unusable as sentence:
        print(sentence, file=sys.stderr)
    return UNREADABLE
