"""A worksheet worked from values, and inputs that are quantities: no text on the way."""

import pickle

import pint
import pytest

import calc
from calc.units.quantities import registry
from tests.contract.samples import sheets

Q = pint.Quantity


def test_the_same_values_as_texts_and_as_floats_give_the_same():
    texts = {"power": "24 W", "level": "40 %", "hours": "5 h", "voltage": "12.8 V"}
    by_text = calc.work("light-dimming", texts)
    by_value = calc.calculate(
        "light-dimming", power=24.0, level=0.4, hours=5 * 3600.0, voltage=12.8
    )
    assert by_value == by_text.result


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_without_values_it_is_the_sheet_s_own_example(sheet):
    assert calc.calculate(sheet.id) == calc.work(sheet.id).result


def test_a_default_that_goes_by_a_choice_goes_by_the_choice_given():
    lead = calc.calculate("runtime", chemistry="AGM")
    assert lead == calc.work("runtime", {"chemistry": "AGM"}).result
    assert lead != calc.calculate("runtime", chemistry="LFP")


def test_quantities_go_in_and_come_out_of_the_registry_that_everybody_shares():
    answer = calc.work("wire-drop", {"current": Q(30, "A"), "length": Q(3.6576, "m")})
    same = calc.work("wire-drop", {"current": "30 A", "length": "12 ft"})
    assert answer["drop"].m_as("V") == pytest.approx(same["drop"].m_as("V"), rel=1e-12)
    assert (answer["drop"] + Q(1, "V")).m_as("V") == pytest.approx(same["drop"].m_as("V") + 1)
    assert registry() is pint.get_application_registry().get()


def test_a_warm_quantity_keeps_its_offset():
    warm = Q(140, "degF")
    assert calc.work("wire-drop", {"temperature": warm})["resistance"].m_as("ohm") == pytest.approx(
        calc.work("wire-drop", {"temperature": "60 °C"})["resistance"].m_as("ohm")
    )


def test_a_registry_that_lacks_a_unit_of_ours_gets_it_and_keeps_its_own():
    kept = pint.get_application_registry().get()
    own = pint.UnitRegistry(None)
    for line in ("meter = [length] = m", "second = [time] = s", "foot = 0.5 * meter = ft"):
        own.define(line)
    try:
        pint.set_application_registry(own)
        assert registry().Quantity(1, "foot").m_as("meter") == 0.5  # theirs is not replaced
        assert registry().Quantity(1, "inch").m_as("meter") > 0
    finally:
        pint.set_application_registry(kept)


@pytest.mark.parametrize(
    ("sheet", "inputs", "field", "part"),
    [
        ("wire-drop", {"length": 3}, "length", "needs a unit"),
        ("wire-drop", {"limit": 3}, "limit", "needs a unit"),
        ("wire-drop", {"current": 30.0}, "current", "needs a unit"),
        ("wire-drop", {"length": Q(3, "A")}, "length", "must be a length"),
        ("wire-drop", {"length": None}, "length", "must be a text"),
        ("wire-drop", {"amps": 3}, "amps", "no field 'amps'"),
    ],
)
def test_what_could_be_mistaken_is_refused_beside_its_field(sheet, inputs, field, part):
    with pytest.raises(calc.InputError) as refusal:
        calc.work(sheet, inputs)
    assert refusal.value.field == field
    assert part in refusal.value.message


def test_a_bare_number_is_taken_where_there_is_no_unit_to_mistake():
    assert calc.work("wire-drop", {"parallel": 2}).inputs["parallel"].value == 2


@pytest.mark.parametrize(
    ("values", "field", "part"),
    [
        ({"power": -1.0}, "power", "must be between"),
        ({"power": "24 W"}, "power", "must be a number"),
        ({"power": Q(24, "V")}, "power", "must be a power"),
        ({"lamp": "candle"}, "lamp", "must be LED-strip, filament or own-regulator"),
        ({"watts": 24.0}, "watts", "no parameter 'watts'"),
        ({"level": None}, "level", "must be given"),
        ({"power": 24.0, "zone_power": 25.0}, "zone_power", "no more than the power"),
    ],
)
def test_values_out_of_range_are_refused_as_texts_are(values, field, part):
    with pytest.raises(calc.InputError) as refusal:
        calc.calculate("light-dimming", **values)
    assert [refusal.value.field] == [field]
    assert part in refusal.value.message


def test_all_problems_come_at_once():
    with pytest.raises(calc.InputError) as refusal:
        calc.work("wire-drop", {"length": 3, "current": "much", "amps": "3"})
    assert {problem.field for problem in refusal.value.problems} == {"length", "current", "amps"}


def test_errors_and_answers_pickle_and_an_answer_s_repr_fits_a_screen():
    answer = calc.work("week-ahead")
    again = pickle.loads(pickle.dumps(answer))
    assert again.worksheet is answer.worksheet
    assert again.shown == answer.shown
    assert again["lowest_state"] == answer["lowest_state"]
    assert len(repr(answer).splitlines()) < 24
    assert max(map(len, repr(answer).splitlines())) < 300
    with pytest.raises(calc.InputError) as refusal:
        calc.work("wire-drop", {"current": "much"})
    copy = pickle.loads(pickle.dumps(refusal.value))
    assert copy.problems[0].message == refusal.value.problems[0].message


def test_a_temperature_typed_in_celsius_is_never_answered_in_fahrenheit_for_a_length_in_feet():
    frost = {"length": "12 ft", "cold_cut_off": "proven"}
    celsius = calc.work("alternator-charge", {**frost, "temperature": "-2 °C"})
    fahrenheit = calc.work("alternator-charge", {**frost, "temperature": "28.4 °F"})
    for answer, unit, other in ((celsius, "°C", "°F"), (fahrenheit, "°F", "°C")):
        held = next(one for one in answer.cautions if one.rule == "charge.held-by-cold-cut-off")
        assert unit in held.text and other not in held.text
        assert unit in answer.sentence and other not in answer.sentence
