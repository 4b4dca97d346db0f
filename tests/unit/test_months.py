"""The picture of a year, the scale and the style sheet that it shares with a bank's days."""

import re
from math import isclose
from pathlib import Path
from types import SimpleNamespace
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.render.months import months_html
from calc.render.svg import scale_end
from calc.worksheet.pictures import Months
from tests.unit.drawing import START, Drawn, check_apart, check_inside, draw

STYLES = Path(__file__).resolve().parents[2] / "docs" / "assets" / "lugwise.css"
MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September")
MONTHS += ("October", "November", "December")
SUMS = (310.0, 520.0, 900.0, 1200.0, 1500.0, 1640.0, 1600.0, 1380.0, 1010.0, 640.0, 360.0, 250.0)
BY_THE_YEAR = Months(rows="months", chosen="month", caption="A day of each month.")


def year(chosen, times=1.0, sums=SUMS):
    rows = tuple(
        SimpleNamespace(month=month, energy=times * 3600 * each)
        for month, each in zip(MONTHS, sums, strict=True)
    )
    answer = SimpleNamespace(values={"months": rows, "month": chosen}, shown={})
    html = str(months_html(answer, BY_THE_YEAR))
    whole = ElementTree.fromstring(f"<div>{html}</div>")
    return Drawn(answer, html, whole.find("figure/svg"), whole), html


@pytest.mark.parametrize("times", [0.01, 1.0, 6.0, 13.0, 100.0])
@pytest.mark.parametrize("chosen", MONTHS)
def test_the_bars_of_a_year_are_as_high_as_their_energies_and_one_is_marked(chosen, times):
    drawn, _ = year(chosen, times)
    bars = sorted(drawn.svg.iter("rect"), key=lambda one: float(one.get("x")))
    heights = [float(bar.get("height")) for bar in bars]
    for height, energy in zip(heights, SUMS, strict=True):
        assert abs(height / max(heights) - energy / max(SUMS)) < 0.003
    (own,) = [place for place, bar in enumerate(bars) if "lw-bar" in bar.get("class")]
    assert MONTHS[own] == chosen
    ((tip, *_),) = drawn.path("lw-pointer")
    assert abs(tip[0] - float(bars[own].get("x")) - float(bars[own].get("width")) / 2) < 0.2
    title = next(text for text, _ in drawn.words() if text.startswith("A day"))
    scale = max(float(text) for text, box in drawn.words() if box[1] < START)
    foot = max(float(bar.get("y")) + float(bar.get("height")) for bar in bars)
    high = min(float(one.get("y1")) for one in drawn.of("line", "lw-grid"))
    most = max(heights) / (foot - high) * scale * (1000 if "kW" in title else 1)
    assert isclose(most, times * max(SUMS), rel_tol=0.003)


@pytest.mark.parametrize("times", [0.01, 1.0, 6.0, 13.0, 100.0])
@pytest.mark.parametrize("chosen", MONTHS)
def test_the_words_of_a_year_stay_inside_and_off_one_another(chosen, times):
    drawn, _ = year(chosen, times)
    check_inside(drawn)
    check_apart(drawn)


def test_a_year_in_words_names_each_month_with_its_energy():
    said = year("November")[0].svg.get("aria-label")
    for month, each in zip(MONTHS, SUMS, strict=True):
        assert f"{month} {each:.0f}\u00a0Wh" in said
    assert said.endswith("The month you chose is November.")


def test_a_year_that_brings_nothing_is_not_drawn():
    assert year("June", sums=(0.0,) * 12)[1] == ""


def test_each_class_of_the_drawings_is_in_the_style_sheet():
    styles = STYLES.read_text(encoding="utf-8")
    both = draw(floor=0.5, load=200.0).html + year(chosen="June")[1]
    for class_ in set(" ".join(re.findall(r'class="([^"]+)"', both)).split()):
        assert re.search(rf"\.{class_}\b(?!-)", styles), class_


@given(st.floats(1e-3, 1e7))
def test_a_scale_ends_at_a_round_figure_not_far_above_the_most(most):
    end = scale_end(most)
    assert most <= end * (1 + 1e-9)
    assert end <= 1.34 * most or isclose(end, 1.34 * most)
    for figure in (end, end / 2):
        assert re.fullmatch(r"[1-9]\d?0*", f"{figure * 1e6:.0f}"), figure


def test_a_scale_for_nothing_is_still_a_scale():
    assert scale_end(0.0) > 0
