"""What a person types: what is read, what is refused, and that neither takes long."""

import math
import time

import pytest

from calc.units import quantities, typed
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    LENGTH,
    NUMBER,
    POWER,
    RATIO,
    TEMPERATURE,
    TIME,
    TORQUE,
    VOLTAGE,
)
from calc.units.kinds.faults import INSULATION
from calc.units.quantities import to_base
from calc.units.typed import (
    AMBIGUOUS,
    EMPTY,
    LONGEST,
    NOT_A_NUMBER,
    TOO_LONG,
    WRONG_UNIT,
    Unreadable,
    is_bare,
    read,
)


def value(text, *kinds):
    """Return what a text says in the base unit of its kind."""
    got = read(text, kinds, (kinds[0], kinds[0].units[0]))
    return to_base(got.number, got.kind, got.unit.name)


def refusal(text, *kinds):
    with pytest.raises(Unreadable) as error:
        read(text, kinds, (kinds[0], kinds[0].units[0]))
    return error.value.why


@pytest.mark.parametrize(
    ("text", "kind", "base"),
    [
        ("30", CURRENT, 30),
        ("30A", CURRENT, 30),
        ("30 a", CURRENT, 30),
        ("  30   amps ", CURRENT, 30),
        ("1,5", VOLTAGE, 1.5),
        ("1.5", VOLTAGE, 1.5),
        (".5 V", VOLTAGE, 0.5),
        ("5. V", VOLTAGE, 5),
        ("1 234 W", POWER, 1234),
        ("12 345 678 W", POWER, 12345678),
        ("1\u00a0234 W", POWER, 1234),
        ("1\u202f234,5 W", POWER, 1234.5),
        ("1234.5 W", POWER, 1234.5),
        ("0,123 V", VOLTAGE, 0.123),
        ("12,34 V", VOLTAGE, 12.34),
        ("1.5e3 W", POWER, 1500),
        ("2E-3 A", CURRENT, 0.002),
        ("500 mW", POWER, None),
        ("100 ah", CHARGE, 360000),
        ("100 A·h", CHARGE, 360000),
        ("100 A.h", CHARGE, 360000),
        ("100 A⋅h", CHARGE, 360000),
        ("100 amp-hours", CHARGE, 360000),
        ("5000 mAh", CHARGE, 18000),
        ("-5", TEMPERATURE, -5),
        ("−5 °C", TEMPERATURE, -5),
        ("–5 C", TEMPERATURE, -5),
        ("14 F", TEMPERATURE, -10),
        ("14°F", TEMPERATURE, -10),
        ("77 degF", TEMPERATURE, 25),
        ("3 %", RATIO, 0.03),
        ("3", RATIO, 0.03),
        ("3 per cent", RATIO, 0.03),
        ("12 N.m", TORQUE, 12),
        ("12 Nm", TORQUE, 12),
        ("12 N·m", TORQUE, 12),
        ("3 ft 6 in", LENGTH, 1.0668),
        ("3' 6\"", LENGTH, 1.0668),
        ("1 h 20 min", TIME, 4800),
        ("1h20min", TIME, 4800),
        ("2 hr 5", TIME, 7500),
        ("10 hours 5 minutes", TIME, 36300),
        ("3′ 6″", LENGTH, 1.0668),
        ("3’ 6”", LENGTH, 1.0668),
        ("3'6", LENGTH, 1.0668),
        ("3ft6in", LENGTH, 1.0668),
        ("12'", LENGTH, 3.6576),
        ('6"', LENGTH, 0.1524),
        ("3.6 metres", LENGTH, 3.6),
        ("360 cm", LENGTH, 3.6),
        ("1.25", NUMBER, 1.25),
        ("2", COUNT, 2),
        ("٣٠ A", CURRENT, 30),
        ("۱۲٫۵ V", VOLTAGE, 12.5),
        ("１２ Ａ", CURRENT, 12),
        ("１２．５ V", VOLTAGE, 12.5),
        ("\u200f30\u200e A", CURRENT, 30),
        ("\u202e30 A\u202c", CURRENT, 30),
        ("\ufeff30\u200b A", CURRENT, 30),
    ],
)
def test_a_text_is_read_as_a_person_means_it(text, kind, base):
    """The values follow from the definitions of the units: 1 in = 25.4 mm, 1 h = 3600 s."""
    if base is None:
        assert refusal(text, kind) == WRONG_UNIT
    else:
        assert value(text, kind) == pytest.approx(base, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "kind", "why"),
    [
        ("", CURRENT, EMPTY),
        ("   ", CURRENT, EMPTY),
        ("\u200f\u200b", CURRENT, EMPTY),
        ("abc", CURRENT, NOT_A_NUMBER),
        ("A", CURRENT, NOT_A_NUMBER),
        ("nan", CURRENT, NOT_A_NUMBER),
        ("inf A", CURRENT, NOT_A_NUMBER),
        ("--5", TEMPERATURE, NOT_A_NUMBER),
        ("+-5", TEMPERATURE, NOT_A_NUMBER),
        (".", CURRENT, NOT_A_NUMBER),
        ("1,234", POWER, AMBIGUOUS),
        ("12,345 W", POWER, AMBIGUOUS),
        ("123,456 W", POWER, AMBIGUOUS),
        ("1.234,5", POWER, AMBIGUOUS),
        ("1,234.5", POWER, AMBIGUOUS),
        ("1.234.567", POWER, AMBIGUOUS),
        ("1,2,3", POWER, AMBIGUOUS),
        ("1 2 3", POWER, NOT_A_NUMBER),
        ("12 34 W", POWER, NOT_A_NUMBER),
        ("1  234", POWER, NOT_A_NUMBER),
        ("10**10**8", POWER, NOT_A_NUMBER),
        ("9**9**9**9", POWER, NOT_A_NUMBER),
        ("1+1", POWER, NOT_A_NUMBER),
        ("1/2", POWER, NOT_A_NUMBER),
        ("2*3 W", POWER, NOT_A_NUMBER),
        ("0x10", POWER, NOT_A_NUMBER),
        ("1_000", POWER, NOT_A_NUMBER),
        ("12 A 13 A", CURRENT, NOT_A_NUMBER),
        ("12 ft", VOLTAGE, WRONG_UNIT),
        ("12 V", LENGTH, WRONG_UNIT),
        ("3' 6\"", VOLTAGE, NOT_A_NUMBER),
        ("3 ft 6 in", CURRENT, NOT_A_NUMBER),
        ("1 h 20 min", CURRENT, NOT_A_NUMBER),
        ("1 h 20 A", TIME, NOT_A_NUMBER),
        ("1 h 60 min", TIME, NOT_A_NUMBER),
        ("1,333 h 20 min", TIME, AMBIGUOUS),
        ("1.5 h 30 min", TIME, NOT_A_NUMBER),
        ("2 h 30 min", CURRENT, NOT_A_NUMBER),
        ("10 C", CURRENT, WRONG_UNIT),
        ("3 F", CURRENT, WRONG_UNIT),
        ("1k", CURRENT, WRONG_UNIT),
        ("5 MW", POWER, WRONG_UNIT),
        ("200 mΩ", INSULATION, WRONG_UNIT),
        ("200 mohm", INSULATION, WRONG_UNIT),
        ("5 MA", CURRENT, WRONG_UNIT),
        ("5 MAh", CHARGE, WRONG_UNIT),
        ("100 Wh", CHARGE, WRONG_UNIT),
        ("🔋", CURRENT, NOT_A_NUMBER),
        ("30 🔋", CURRENT, NOT_A_NUMBER),
        ("30⚡A", CURRENT, NOT_A_NUMBER),
        ("<b>30</b>", CURRENT, NOT_A_NUMBER),
        ("__import__('os')", CURRENT, NOT_A_NUMBER),
        ("½ A", CURRENT, NOT_A_NUMBER),
    ],
)
def test_a_text_that_is_not_one_number_is_refused_for_its_reason(text, kind, why):
    assert refusal(text, kind) == why


@pytest.mark.parametrize(
    ("text", "instead"),
    [
        ("1,234", "1234 or 1.234"),
        ("12,345 W", "12345 or 12.345"),
        ("1.234,5", "1234.5 or 1234,5"),
        ("1,234.5", "1234.5 or 1234,5"),
    ],
)
def test_what_is_ambiguous_is_answered_with_ways_to_write_it_that_are_read(text, instead):
    with pytest.raises(Unreadable) as error:
        read(text, (POWER,), (POWER, POWER.units[0]))
    assert (error.value.why, error.value.instead) == (AMBIGUOUS, instead)
    for way in instead.split(" or "):
        assert value(way, POWER) == float(way.replace(",", "."))


def test_forty_characters_are_read_and_forty_one_are_not():
    assert LONGEST == 40
    assert value("0" * 37 + "1 A", CURRENT) == 1
    assert refusal("0" * 38 + "1 A", CURRENT) == TOO_LONG


@pytest.mark.parametrize("text", ["1e999", "1e400 W", "9e100", "1e" + "9" * 30])
def test_a_number_beyond_any_float_is_beyond_every_limit(text):
    assert value(text, POWER) == math.inf


@pytest.mark.parametrize("text", ["1e-999", "0e999", "1e-400 W"])
def test_a_number_too_small_for_a_float_is_nought(text):
    assert value(text, POWER) == 0


def test_milli_is_never_taken_for_mega():
    """In lower case `ma` is milliamps; a capital M would be a million times as much: refused."""
    assert value("250 mA", CURRENT) == value("250 ma", CURRENT) == 0.25
    assert refusal("250 MA", CURRENT) == WRONG_UNIT
    assert refusal("250 Milliamps", CURRENT) == WRONG_UNIT


def test_a_field_of_two_kinds_reads_either_and_takes_a_bare_number_in_the_first():
    assert read("5 A", (POWER, CURRENT), (POWER, POWER.units[0])).kind is CURRENT
    assert read("5 kW", (POWER, CURRENT), (POWER, POWER.units[0])).kind is POWER
    assert read("5", (POWER, CURRENT), (POWER, POWER.units[0])).kind is POWER


def test_the_digits_are_kept_as_typed():
    assert read("1,50 V", (VOLTAGE,), (VOLTAGE, VOLTAGE.units[0])).digits == "1.50"
    assert read("−5 °C", (TEMPERATURE,), (TEMPERATURE, TEMPERATURE.units[0])).digits == "-5"
    assert read("3' 6\"", (LENGTH,), (LENGTH, LENGTH.units[0])).digits == "3 ft 6 in"


@pytest.mark.parametrize("text", ["30", " 30 ", "1,5", "-4", "٣", "1 234", "1e3"])
def test_a_bare_number_is_known_as_one(text):
    assert is_bare(text)


@pytest.mark.parametrize("text", ["30 A", "abc", "", "3' 6\"", "30%", "1" * 30 + "A"])
def test_what_has_a_unit_or_is_no_number_is_not_bare(text):
    assert not is_bare(text)


@pytest.mark.parametrize(
    "text", ["9" * 40, "1 " * 20, "1," * 20, "(" * 40, "1e" * 20, "' " * 20, "1ft" * 13, "٣" * 40]
)
def test_no_text_takes_long(text):
    began = time.process_time()
    for kinds in ((LENGTH,), (POWER, CURRENT), (TEMPERATURE,)):
        try:
            read(text, kinds, (kinds[0], kinds[0].units[0]))
        except Unreadable:
            continue
    assert time.process_time() - began < 0.2


def test_no_two_units_of_a_kind_share_a_spelling():
    kinds = [kind for kind in vars(quantities).values() if isinstance(kind, quantities.Kind)]
    for kind in kinds:
        seen = {}
        for unit in kind.units:
            for spelling in filter(None, (unit.symbol, unit.link, *unit.spellings)):
                assert seen.setdefault(typed.fold(spelling), unit) is unit, spelling


@pytest.mark.parametrize("text", ["2 MΩ", "2 Mohm", "2 megohm", "2 Megohms", "2000 kΩ", "0.002 GΩ"])
def test_insulation_is_read_in_megohms_and_never_in_milliohms(text):
    assert value(text, INSULATION) == pytest.approx(2e6, rel=1e-12)
