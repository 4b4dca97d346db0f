"""The words and the table that go with the picture of a bank's days."""

import re
from xml.etree import ElementTree

import pytest

from calc.render.chart import chart_html
from calc.render.days import BLOCK, Days, Flow, alternative
from calc.worksheet.pictures import Chart
from tests.unit.drawing import CHART, FLOWS, WEEKS, draw, week

HOSTILE = "<script>alert(\"1\")</script> & 'more'"


@pytest.fixture(params=list(WEEKS), ids=str)
def drawn(request):
    return draw(**WEEKS[request.param])


def test_words_from_outside_are_words_and_no_markup():
    answer = week()
    hostile = Chart(
        states="states", lowest="lowest", floor="floor", nights="nights",
        sources=((HOSTILE, "sun_hours", "sun"),), load=("load_hours", "load"), caption=HOSTILE,
    )  # fmt: skip
    html = str(chart_html(answer, hostile))
    whole = ElementTree.fromstring(f"<div>{html}</div>")
    assert whole.find("figure/figcaption").text == HOSTILE
    assert HOSTILE in whole.find("figure/svg").get("aria-label")
    assert not [one for one in whole.iter() if one.tag.lower() == "script"]


def test_the_words_tell_start_lowest_end_and_what_each_source_brought():
    answer = week(shore=0.0)
    said = draw(shore=0.0).svg.get("aria-label")
    states = answer.values["states"]
    hour = states.index(min(states))
    assert said.startswith("Bank over 7 days: 100\u00a0% at the start, ")
    assert f"lowest {answer.shown['lowest']} on day {1 + hour // 24} at {hour % 24:02d}:00" in said
    end = re.search(r"([\d.]+)\u00a0% at the end", said)[1]
    assert float(end) <= 100 * states[-1] + 1e-6 < float(end) + 0.1
    assert f"sun {answer.shown['sun']}, driving {answer.shown['drive']}, shore nothing." in said
    assert said.endswith(f"The loads took {answer.shown['load']}.")


def test_the_end_of_the_last_day_is_its_midnight():
    falling = tuple(1 - hour / 400 for hour in range(49))
    none = Flow("sun", (0.0,) * 48, "0 Wh")
    days = Days(falling, "88 %", 0.5, "50 %", (), (none,), none, "")
    assert "lowest 88 % on day 2 at 24:00" in alternative(days)


@pytest.mark.parametrize("last, goes_on", [(0.499, True), (0.5, False)])
def test_a_bank_under_its_floor_is_said_to_lose_a_little_by_itself(last, goes_on):
    none = Flow("sun", (0.0,) * 24, "0 Wh")
    days = Days((1.0,) + (0.5,) * 23 + (last,), "49.9 %", 0.5, "50 %", (), (none,), none, "")
    assert ("still loses a little by itself" in alternative(days)) is goes_on


def test_a_source_that_brought_nothing_has_no_key():
    texts = [text for text, _ in draw(shore=0.0).words()]
    assert any(text.startswith("driving") for text in texts)
    assert not any(text.startswith("shore") for text in texts)


def test_the_table_has_a_line_for_each_block_of_hours_with_its_state_and_energies(drawn):
    rows = list(drawn.whole.find("details").iter("tr"))
    lines = [[cell.text for cell in row] for row in rows if row[0].get("scope") == "row"]
    *blocks, last = lines
    values = drawn.values
    hours = len(values["states"]) - 1
    flows = [name for name in FLOWS if values[name] > 0]
    assert len(blocks) == hours / BLOCK
    for at, line in enumerate(blocks):
        time, state, *cells = line
        assert time == f"{BLOCK * at % 24:02d}:00"
        shown = float(state.strip("\u00a0%"))
        assert abs(100 * values["states"][BLOCK * at] - shown) <= 0.05 + 1e-9
        for name, cell in zip(flows, cells, strict=True):
            energy = sum(values[f"{name}_hours"][BLOCK * at : BLOCK * (at + 1)]) / 3600
            number = float(cell.replace("\u202f", ""))
            assert (
                abs(number - energy)
                <= max(0.5 if energy >= 100 else 0.005 * energy, 0.0005 * energy) + 1e-9
            )
    assert [f"{cell} Wh" for cell in last[2:]] == [drawn.answer.shown[name] for name in flows]
    heads = [row[0].text for row in rows if row[0].get("scope") == "rowgroup"]
    assert heads == [f"Day {day + 1}" for day in range(hours // 24)]


def test_a_week_is_small_enough_for_the_page():
    assert len(draw().html.encode()) < 25_000


def test_the_drawing_needs_no_id_so_that_it_may_stand_twice_in_a_page(drawn):
    assert not re.search(r"\bid=|url\(|style=", drawn.html)


def test_there_is_no_drawing_without_days():
    answer = week()
    answer.values["states"] = ()
    assert str(chart_html(answer, CHART)) == ""
