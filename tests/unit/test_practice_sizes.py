"""A reply that is the size of a conductor: any spelling, either system, larger than needed."""

from dataclasses import replace

import pytest

import calc
from calc.practice import mark, question
from tests.unit.test_practice import numbered


def test_a_safe_larger_size_is_accepted_with_a_word():
    """3 % of 12 V over 2 × 6 m at 5 A: 6 mΩ/m. IEC 60228 at 60 °C: 4 mm² 5.73, 2.5 mm² 9.23."""
    one = numbered("wire-drop", 14, "smallest_conductor", current="5 A", length="6 m")
    assert one.shown == "4\u00a0mm²"
    for size in ("6 mm2", "10 mm2"):
        marked = mark(one, size)
        assert marked.right
        assert marked.text.startswith("Accepted: more than needed, which is safe. 4\u00a0mm²")
    assert mark(one, "16 mm2").text == "Not right. That is safe, but far more than needed."
    assert mark(one, "1 mm2").text == "Not right. It is too small."


def test_a_size_of_the_other_system_is_judged_by_what_that_system_needs():
    """6 mΩ/m again. NEC chapter 9 table 8 at 60 °C: 10 AWG 3.88 mΩ/m, 12 AWG 6.18: too thin."""
    one = numbered("wire-drop", 14, "smallest_conductor", current="5 A", length="6 m")
    assert mark(one, "10 AWG").text == "Right: 10 AWG. In the sizes asked for: 4\u00a0mm²."
    assert mark(one, "#6").text.startswith("Accepted: more than needed, which is safe. 10 AWG is")
    assert mark(one, "2/0").text == "Not right. That is safe, but far more than needed."
    thin = mark(one, "12 AWG")
    assert (thin.right, thin.counts, thin.text) == (False, True, "Not right. It is too small.")
    assert "second one" in mark(one, "14 AWG").text
    assert one.counts_as_right == "AWG or mm² will do. Up to 2 sizes larger is accepted."


def test_a_gauge_question_reads_metric_sizes_and_bare_gauges():
    one = numbered("wire-size", 2, "conductor", current="120 A", length="4 ft")
    assert mark(one, "25 mm2").text == f"Right: 25\u00a0mm². In the sizes asked for: {one.shown}."
    assert mark(one, "4").text == f"Right: {one.shown}."
    assert mark(one, "2/0").text == "Not right. That is safe, but far more than needed."
    assert "mm²" not in mark(one, "2/0").text
    with pytest.raises(calc.InputError, match="a size such as 22 AWG or 240"):
        mark(one, "52 mm2")


def test_a_size_is_too_small_where_the_other_system_has_none_large_enough():
    one = numbered("wire-size", 2, "conductor")
    thick = replace(one, inputs={**one.inputs, "current": "900 A", "ambient": "60 C"})
    assert mark(thick, "6 mm2").text == "Not right. It is too small."


def test_a_size_may_be_spelt_as_in_its_field_and_a_thinner_one_is_told_its_slip():
    one = numbered("wire-drop", 34, "smallest_conductor", current="10 A", length="4 m")
    right = one.answer["smallest_conductor"]
    for text in (right, right.replace(" mm2", " mm²"), right.replace(" mm2", " sq mm")):
        assert mark(one, text).right
    half = calc.work("wire-drop", {**one.inputs, "length": "2 m"})["smallest_conductor"]
    assert "second one" in mark(one, half).text
    assert mark(one, "120 mm2").text == "Not right. That is safe, but far more than needed."
    with pytest.raises(calc.InputError, match="Your answer must be a size such as 22 AWG or 240"):
        mark(one, "9 mm2")


def test_a_size_may_be_told_by_its_number_alone():
    sized = next(one for one in map(question_of_sizes, range(1, 40)) if one is not None)
    right = str(sized.answer.values[sized.task.asks])
    assert right.endswith(" mm2")
    assert mark(sized, right.removesuffix(" mm2")).right
    with pytest.raises(calc.InputError, match="a size such as 22 AWG or 240"):
        mark(sized, "4711")


def question_of_sizes(number: int):
    one = question("wire-size", number)
    sizes = one.task.choices and all(name.endswith(" mm2") for name in one.task.choices)
    return one if sizes and one.answer.values[one.task.asks] else None
