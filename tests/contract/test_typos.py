"""A slip of the pen in a declaration or a rule does not get past the tests: slips are put in."""

import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

import calc
from calc.worksheet.declare import Placed
from tests.contract.audit import faults_of
from tests.contract.samples import sheets

PROJECT = Path(__file__).parents[2]
SHEET = calc.find("light-dimming")


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_a_declaration_names_only_what_is_there(sheet):
    assert faults_of(sheet) == []


def with_rule(place: int, **change):
    """Return the sheet with one of its rules changed."""
    rules = list(SHEET.rules)
    rules[place] = replace(SHEET.uses[place].rule, **change)
    return replace(SHEET, rules=tuple(rules))


def with_step(place: int, **change):
    """Return the sheet with one of its steps changed."""
    steps = list(SHEET.steps)
    steps[place] = replace(steps[place], **change)
    return replace(SHEET, steps=tuple(steps))


def with_field(name: str, **change):
    """Return the sheet with one of its fields changed."""
    fields = (replace(f, **change) if f.id == name else f for f in SHEET.fields)
    return replace(SHEET, fields=tuple(fields))


@pytest.mark.parametrize(
    ("broken", "told"),
    [
        (with_rule(2, headline="{charging_curent} goes through it."), "charging_curent"),
        (with_rule(9, text="It seems {sen} as bright."), "{sen}"),
        (with_step(0, text="Of {lights.levle}."), "lights.levle"),
        (with_step(0, of="ful_charge"), "ful_charge"),
        (with_step(3, of="power_shares"), "power_shares"),
        (with_step(5, of=""), "''"),
        (with_rule(0, source="practise"), "practise"),
        (with_step(0, source="ohms"), "ohms"),
        (with_rule(9, source="light"), "'light'"),
        (with_field("held", only_if=("lamps", "LED-strip")), "lamps"),
        (with_field("held", only_above="lampes"), "lampes"),
        (with_field("own", default_by=("lampe", {"LED-strip": "0 A"})), "lampe"),
        (
            replace(
                SHEET,
                rules=(*SHEET.rules, Placed(rule=SHEET.uses[2].rule, fields=(("rated", "ratde"),))),
            ),
            "ratde",
        ),
        (with_step(0, formula="power / volts * hours"), "volts"),
        (replace(SHEET, keep_distinct=(("full_charge", "dimed_charge"),)), "dimed_charge"),
    ],
)
def test_a_wrong_name_is_told(broken, told):
    assert any(told in fault for fault in faults_of(broken)), faults_of(broken)


SLIPS = (
    ("d.charging_current)", "d.charging_curent)"),
    ("d.lights.lamp is Lamp.FILAMENT", "d.lights.lampe is Lamp.FILAMENT"),
    ("d.dimmer.own > 0", "d.own > 0"),
)


def test_a_wrong_attribute_is_found_by_the_type_checker(tmp_path):
    text = (PROJECT / "calc/energy/rules/dimming.py").read_text("utf-8")
    for right, wrong in SLIPS:
        assert right in text
        text = text.replace(right, wrong, 1)
    copy = tmp_path / "slips.py"
    copy.write_text(text, "utf-8")
    command = [sys.executable, "-m", "mypy", "--strict", "--no-error-summary", str(copy)]
    done = subprocess.run(command, capture_output=True, text=True, cwd=PROJECT)
    told = [line for line in done.stdout.splitlines() if "slips.py" in line]
    assert len([line for line in told if "[attr-defined]" in line]) == len(SLIPS), done.stdout
