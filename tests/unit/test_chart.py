"""The picture of a bank's days, read back from the drawing and set against what went in.

A drawing's figures are rounded to a tenth of a unit of the drawing, so a place read back from it is
off by half of that at most.
"""

from itertools import pairwise
from math import isclose

import pytest

from calc.render.days import BLOCK
from calc.render.svg import RIGHT, WIDTH
from tests.unit.drawing import CHART, OFF, START, WEEKS, check_apart, check_inside, draw

STYLES = {"sun": "lw-in-full", "drive": "lw-in-striped", "shore": "lw-in-hollow"}


@pytest.fixture(params=list(WEEKS), ids=str)
def drawn(request):
    return draw(**WEEKS[request.param])


def top_axis(drawn):
    """Return the heights of a full and of an empty bank, from the lines drawn there."""
    lines = sorted(
        float(one.get("y1"))
        for one in drawn.of("line", "lw-tick")
        if one.get("y1") == one.get("y2")
    )
    full = min(float(one.get("y1")) for one in drawn.of("line", "lw-grid"))
    return full, lines[0], lines[1]


def power_axis(drawn):
    """Return the height of no power and how many watts a unit of the drawing stands for."""
    *_, foot = top_axis(drawn)
    title = next(text for text, _ in drawn.words() if text.startswith("Coming in"))
    watts = 1000.0 if "kW" in title else 1.0
    high = sorted(float(one.get("y1")) for one in drawn.of("line", "lw-grid"))[1]
    figures = {
        text: box
        for text, box in drawn.words()
        if box[1] < START and high - 12 < box[3] < high + 12
    }
    (figure,) = figures
    return foot, watts * float(figure) / (foot - high)


def test_the_drawing_is_well_formed(drawn):
    assert drawn.svg.get("viewBox").startswith(f"0 0 {WIDTH:g} ")
    assert drawn.whole.find("figure/figcaption").text == CHART.caption


def test_nothing_stands_outside_the_drawing(drawn):
    check_inside(drawn)


def test_no_words_stand_on_other_words(drawn):
    check_apart(drawn)


def test_no_mark_of_the_key_stands_on_words(drawn):
    *_, foot = top_axis(drawn)
    marks = [(float(one.get("x")), float(one.get("y"))) for one in drawn.of("rect", "lw-night")]
    for class_ in ("lw-load", "lw-floor", "lw-dry"):
        marks += [(float(o.get("x1")), float(o.get("y1"))) for o in drawn.of("line", class_)]
    for class_ in STYLES.values():
        marks += [(min(x for x, _ in piece), piece[0][1]) for piece in drawn.path(class_)]
    marks = [(x, y) for x, y in marks if y > foot + 10]
    flows = sum(drawn.values[name] > 0 for name in STYLES)
    assert len(marks) == flows + 2 + bool(drawn.values["nights"]) + bool(drawn.path("lw-dry"))
    for words, (left, right, top, bottom) in drawn.words():
        for x, y in marks:
            beside = x + 7 <= left or x >= right  # a stroke's own place is its middle
            assert beside or y + 3 <= top or y - 6 >= bottom, words


def test_the_line_shows_every_state_at_its_hour(drawn):
    full, empty, _ = top_axis(drawn)
    (line,) = drawn.path("lw-course")
    states = drawn.values["states"]
    assert len(line) == len(states)
    start, wide = line[0][0], (RIGHT - line[0][0]) / (len(states) - 1)
    for hour, ((x, y), state) in enumerate(zip(line, states, strict=True)):
        assert abs(x - (start + hour * wide)) <= OFF
        assert abs((empty - y) - state * (empty - full)) <= OFF


def test_the_lowest_point_is_marked_where_it_is_and_named_under_it(drawn):
    full, empty, _ = top_axis(drawn)
    states = drawn.values["states"]
    (mark,) = drawn.of("circle", "lw-pointer")
    (line,) = drawn.path("lw-course")
    assert abs((empty - float(mark.get("cy"))) / (empty - full) - min(states)) < 0.001
    first = next(hour for hour, state in enumerate(states) if state == min(states))
    assert float(mark.get("cx")) == line[first][0]
    words, box = next(one for one in drawn.words() if one[0].startswith("lowest"))
    assert words == f"lowest {drawn.answer.shown['lowest']}"
    assert box[2] >= max(y for _, y in line) - OFF, "no part of the line can run through it"


def test_the_floor_stands_at_its_share_with_its_figure(drawn):
    full, empty, _ = top_axis(drawn)
    floor = drawn.values["floor"]
    across = max(drawn.of("line", "lw-floor"), key=lambda one: float(one.get("x2")))
    assert abs((empty - float(across.get("y1"))) - floor * (empty - full)) <= OFF
    assert f"empty at {100 * floor:.3g}\u00a0%" in [text for text, _ in drawn.words()]


def test_time_spent_at_the_floor_or_under_it_is_marked_and_said(drawn):
    states, floor = drawn.values["states"], drawn.values["floor"]
    flat = [max(two) <= floor * (1 + 1e-9) for two in pairwise(states)]
    wide = (RIGHT - START) / len(flat)
    marked = sum(last[0] - first[0] for first, last in drawn.path("lw-dry"))
    assert abs(marked - wide * sum(flat)) <= 0.1 * (1 + len(drawn.path("lw-dry")))
    said = f"and is so for {sum(flat)} h" in drawn.svg.get("aria-label")
    assert said is any(flat)
    assert (f"empty for {sum(flat)} h" in [text for text, _ in drawn.words()]) is any(flat)


def test_each_night_is_shaded_for_its_hours(drawn):
    (line,) = drawn.path("lw-course")
    start, hours = line[0][0], len(line) - 1
    shades = [one for one in drawn.of("rect", "lw-night") if float(one.get("height")) > 20]
    nights = drawn.values["nights"]
    assert len(shades) == len(nights)
    for shade, (begin, end) in zip(shades, nights, strict=True):
        x, width = float(shade.get("x")), float(shade.get("width"))
        assert abs(x - (start + (RIGHT - start) * begin / 3600 / hours)) <= OFF
        assert abs(width - (RIGHT - start) * (end - begin) / 3600 / hours) <= OFF
    assert ("night" in [text for text, _ in drawn.words()]) is bool(nights)


@pytest.mark.parametrize("source", STYLES)
def test_the_bars_of_a_source_hold_its_energy(drawn, source):
    """Height times time, summed over the bars; each end of a bar may be off by `OFF`."""
    foot, watts = power_axis(drawn)
    bars = [piece for piece in drawn.path(STYLES[source]) if piece[0][1] <= foot]
    energy = sum((piece[0][1] - piece[1][1]) * watts * BLOCK * 3600 for piece in bars)
    slack = len(bars) * 2 * OFF * watts * BLOCK * 3600
    assert abs(energy - drawn.values[source]) <= slack + 1e-6
    assert bool(bars) is (drawn.values[source] > 0)


def test_the_loads_line_holds_their_energy(drawn):
    foot, watts = power_axis(drawn)
    (line,) = drawn.path("lw-load")
    hours = len(drawn.values["states"]) - 1
    seconds = 3600 * hours / (RIGHT - line[0][0])
    energy = sum((b[0] - a[0]) * (foot - a[1]) for a, b in pairwise(line)) * watts * seconds
    steps = sum(abs(b[1] - a[1]) for a, b in pairwise(line))
    slack = OFF * watts * (3600 * hours + seconds * steps)
    assert abs(energy - drawn.values["load"]) <= slack


def test_sources_stand_one_on_the_other(drawn):
    """At one time no two bars share a height."""
    foot, _ = power_axis(drawn)
    width = BLOCK * (RIGHT - START) / (len(drawn.values["states"]) - 1)
    taken = {}
    for style in STYLES.values():
        for piece in drawn.path(style):
            if piece[0][1] <= foot:
                left = piece[0][0] - (0 if style == "lw-in-hollow" else width / 2)
                block = round((left - START) / width)
                taken.setdefault(block, []).append((piece[1][1], piece[0][1]))
    for bars in taken.values():
        assert max(bottom for _, bottom in bars) == foot
        for lower, upper in pairwise(sorted(bars, reverse=True)):
            assert isclose(lower[0], upper[1], abs_tol=2 * OFF)


def test_days_are_numbered_in_the_middle_of_each(drawn):
    days = (len(drawn.values["states"]) - 1) // 24
    each = (RIGHT - START) / days
    named = {
        text: (box[0] + box[1]) / 2
        for text, box in drawn.words()
        if text.isdigit() and box[0] > START
    }
    assert named and len(named) >= min(days, 7)
    for text, middle in named.items():
        assert abs(middle - (START + each * (int(text) - 0.5))) < 1
