"""The geometry of a van's diagram: nothing on top of anything, and joined as the van is joined."""

import re
from dataclasses import replace
from functools import cache
from random import Random
from types import SimpleNamespace

import pytest

from calc.judge import Level
from calc.units.shown import NO_BREAK_SPACE
from calc.van.demos import DEMOS, demo, demo_text
from calc.van.diagram import layout
from calc.van.diagram.drawing import MOST_HEIGHT, TEXT, WIDTH, Drawing, Flag, Line, Symbol, Words
from calc.van.diagram.read import scheme_of
from calc.van.diagram.scheme import Scheme
from calc.van.files import read_van, write_van
from calc.van.marks import marks
from calc.van.net import MINUS, PLUS, owner
from calc.van.record import Van
from calc.van.review import review
from tests.counts import chance, often
from tests.unit.van.overlaps import faults
from tests.unit.van.traced import joined
from tests.van_samples import SOUND, drawn_van, sound

DRAWN, GROUPS = 200, 20

MILLIMETRES = 25.4 / 72  # in a point
PAPERS = {"A4": (297, 210), "Letter": (279.4, 215.9)}
MARGIN = 8  # mm, as the style sheet has it
LEGENDS = {"positive conductor", "negative conductor", "mains: live, neutral and earth"}


def some(groups: int, usual: int) -> list[int]:
    """Return which of so many groups of drawn vans are looked at: others in each run."""
    return sorted(chance("drawn vans").sample(range(groups), often(usual, groups)))


@cache
def drawn(name: str) -> Drawing:
    van = demo(name)
    return layout(van, van.schedule(), review(van))


def words_of(drawing: Drawing) -> list[str]:
    texts = [m.text for sheet in drawing.sheets for m in sheet.marks if isinstance(m, Words)]
    return [text.replace(NO_BREAK_SPACE, " ") for text in texts]


def found_by_chance(van: Van, rng: Random):
    """Return what a diagram asks of a review: findings on any parts, as many as there may be."""
    parts = [part.id for part in van.everything()]
    return SimpleNamespace(
        findings=[
            SimpleNamespace(
                part_id=rng.choice([*parts, ""]),
                level=rng.choice([Level.STOP, Level.CAUTION, Level.ADVICE, Level.NOTE]),
                not_proven=rng.random() < 0.3,
            )
            for _ in range(rng.randint(0, 80))
        ]
    )


def with_circuits(count: int, text: str = SOUND) -> Van:
    """Return a van's file with so many circuits, each with all that a circuit shows."""
    more = "".join(
        f"""
[[circuits]]
name = "{Random(place).choice(("reading light", "bilge blower", "stereo", "USB sockets"))} {place}"
place = "behind the panel"
load = "{("light", "fan", "electronics", "socket", "motor")[place % 5]}"
current = "{1 + place % 9} A"
from = "fuse-block.{place}"
return_to = "minus-bar"
length = "{2 + place % 5} m"
conductor = "{("14 AWG", "2.5 mm2", "10 AWG")[place % 3]}"
fuse = "10 A"
fuse_family = "blade, regular (type C)"
switch = "in reach"
"""
        for place in range(text.count("[[circuits]]") + 1, count + 1)
    )
    return read_van(text + more)


def one_node(scheme: Scheme, nets: set[str]) -> bool:
    """Return whether bars whose lines are joined are joined by cables without a symbol."""
    bars = {bar.id for bar in (*scheme.bars, *scheme.returns)} & nets
    reached = {min(bars)} if bars else set()
    feeds = [one for one in (*scheme.feeds, *scheme.minus_feeds) if one.id in nets]
    for _ in feeds:
        for one in feeds:
            if {one.start, one.end} & reached:
                reached |= {one.start, one.end}
    return bars <= reached


@pytest.mark.parametrize("name", DEMOS)
def test_nothing_lies_on_anything_in_the_demos(name):
    assert list(faults(drawn(name))) == []


@pytest.mark.parametrize("group", some(GROUPS, 8))
def test_nothing_lies_on_anything_in_drawn_vans(group):
    """With up to 40 circuits, with parts joined anyhow, and with findings on any of them."""
    told = []
    for number in range(DRAWN // GROUPS):
        rng = Random(1000 * group + number)
        van = drawn_van(rng, circuits=rng.choice((None, 5, 15, 16, 40)))
        drawing = layout(van, None, found_by_chance(van, rng) if number % 2 else None)
        told += [f"{group} {number}: {fault}" for fault in faults(drawing)]
    assert told == []


@pytest.mark.parametrize("group", some(4, 2))
def test_no_two_bars_are_joined_by_a_line_in_drawn_vans(group):
    for number in range(10):
        van = drawn_van(Random(5000 + 100 * group + number), circuits=12)
        for sheet in layout(van).sheets:
            for nets in joined(sheet):
                assert one_node(scheme_of(van), nets), number


@pytest.mark.parametrize("name", DEMOS)
def test_lines_join_what_the_van_joins(name):
    """Read back by ends and dots alone, every run that has a line starts and ends at its bars."""
    van = demo(name)
    scheme = scheme_of(van)
    pieces = [nets for sheet in drawn(name).sheets for nets in joined(sheet)]
    bars = {bar.id for bar in (*scheme.bars, *scheme.returns)}
    assert all(one_node(scheme, nets) for nets in pieces)
    mains = scheme.mains
    runs = [*scheme.circuits, *scheme.feeds, *scheme.minus_feeds, *scheme.batteries]
    runs += [one.run for one in scheme.sources]
    runs += [run for run in (mains.shore, mains.inverter) if run] if mains else []
    assert len(runs) > 5
    for run in runs:
        for end in {run.start, run.end} & bars:
            # A terminal of the bank may have no line of its own: cables meet at it.
            others = {one.id for one in runs if end in (one.start, one.end)} - {run.id}
            assert any(run.id in nets and nets & {end, *others} for nets in pieces), (run.id, end)


@pytest.mark.parametrize("name", DEMOS)
def test_each_circuit_says_all_that_its_wiring_needs(name):
    """A stranger reads at its line: terminal, fuse, cable, size, length, and where it returns."""
    van, drawing = demo(name), drawn(name)
    known, text = marks(van), " ".join(words_of(drawing))
    schedule = van.schedule()
    for conductor in van.net.conductors:
        part = conductor.part
        if part.choice("route") if "route" in part.values else None == "inverter":
            continue
        row = schedule.of(part)
        start = conductor.start if part.kind.id != "panels" else owner(conductor.start)
        shown = {known.wire(part), known.terminal(start)}
        shown |= {part.name} if part.kind.id == "circuits" else set()
        if conductor.pole == PLUS and part["fuse"].known:
            shown.add(known.fuse(part))
        if row and row.conductor:
            shown.add(row.conductor.replace("mm2", "mm²"))
        missing = {one for one in shown if one and not _is_said(one, text)}
        assert missing <= {"chassis", "bank.plus", "bank.minus"}, part.id


def _is_said(words: str, text: str) -> bool:
    return all(re.search(rf"(?<![\w.]){re.escape(one)}(?![\w])", text) for one in words.split(" "))


def test_the_sound_van_is_drawn_as_worked_by_hand():
    """By the file of the sample, and the marks that its order gives."""
    said = {
        heading: tuple(one.replace(NO_BREAK_SPACE, " ") for one in entries)
        for heading, entries in layout(sound()).said
    }
    assert said["Circuits"] == (
        "Circuit F1: from X1:1, fuse F1 15 A, cable W1 10 AWG 3.2 m, 5 A, fridge, back to X2.",
        "Circuit F2: from X1:2, fuse F2 5 A, cable W2 14 AWG 5 m, 2 A, lights, back to X2.",
    )
    assert said["Main cables"] == (
        "Cable main plus: from G1:+, fuse F101 100 A, cable W101 2 AWG 1.2 m, 60 A, to X1.",
        "Cable main minus: from G1:−, cable W102 2 AWG 1 m, 60 A, to X2.",
    )


def test_up_to_fifteen_circuits_stand_on_one_sheet_and_more_on_a_second():
    for count in (2, 15):
        assert len(layout(with_circuits(count)).sheets) == 1
    van = with_circuits(15, demo_text("marram"))
    assert len(layout(van, van.schedule()).sheets) == 1
    for count in (16, 40):
        sheets = layout(with_circuits(count)).sheets
        assert len(sheets) == 2
        first = [m.text for m in sheets[0].marks if isinstance(m, Words)]
        assert "F15" in first and "F16" not in first


def test_the_same_van_gives_the_same_drawing():
    van = demo("marram")
    assert layout(van) == layout(read_van(write_van(van)))


@pytest.mark.parametrize("paper", PAPERS)
def test_words_are_seven_points_high_on_one_sheet_of_paper(paper):
    across, down = (side - 2 * MARGIN for side in PAPERS[paper])
    scale = min(across / WIDTH, down / MOST_HEIGHT)  # mm for a unit
    assert TEXT * scale / MILLIMETRES >= 7


def test_findings_stand_by_shape_and_by_their_number_in_the_review():
    van = demo("ten-mistakes")
    found = review(van).findings
    flags = [
        m for sheet in drawn("ten-mistakes").sheets for m in sheet.marks if isinstance(m, Flag)
    ]
    numbers = {flag.number: str(flag.shape) for flag in flags if flag.number}
    assert sorted(numbers) == list(range(1, len(found) + 1))
    for number, one in enumerate(found, 1):
        level = str(one.level) if one.level in (Level.STOP, Level.CAUTION) else "note"
        assert numbers[number] == ("not-proven" if one.not_proven else level)


def test_what_was_not_seen_is_said_and_a_fuse_that_is_none_is_no_fuse():
    names = {m.name for m in drawn("half-seen").sheets[0].marks if isinstance(m, Symbol)}
    assert {"no-fuse", "unseen-fuse"} <= names
    text = words_of(drawn("half-seen"))
    assert "as found, 2026-11-20, A. Brandt" in text and "as planned" not in text
    assert any("size not seen" in one for one in text)


def test_chosen_values_are_marked_and_the_mark_is_explained():
    van = sound().changed({"circuits[1].conductor": "", "circuits[1].fuse": ""})
    drawing = layout(van, van.schedule())
    row = van.schedule().rows[-2]
    assert row.chosen >= {"conductor", "fuse"}
    text = words_of(drawing)
    assert any(one.startswith(f"{row.conductor}*") for one in text)
    assert any(one.startswith("*") for one in text)
    assert not any("*" in one for one in words_of(layout(sound(), sound().schedule())))


def test_a_return_by_chassis_ends_in_the_sign_of_the_chassis():
    van = sound().changed({"circuits[1].return_by": "chassis", "circuits[1].bond_point": "stud 3"})
    before, after = (
        [m.name for m in layout(one).sheets[0].marks if isinstance(m, Symbol)]
        for one in (sound(), van)
    )
    assert after.count("chassis") == before.count("chassis") + 1
    assert "stud 3" in " ".join(words_of(layout(van)))


def test_a_converter_stands_between_what_feeds_it_and_what_it_feeds():
    van = read_van(
        SOUND.replace(', "converters"', "")
        + """
[[converters]]
name = "step down"
output_voltage = "12 V"
rated_current = "20 A"
from = "fuse-block.3"
return_to = "minus-bar"
length = "1 m"
conductor = "10 AWG"
fuse = "15 A"

[[circuits]]
name = "router"
load = "electronics"
current = "1 A"
from = "step-down"
return_to = "minus-bar"
length = "2 m"
conductor = "16 AWG"
fuse = "3 A"
"""
    )
    drawing = layout(van, van.schedule())
    assert not list(faults(drawing))
    pieces = [nets for sheet in drawing.sheets for nets in joined(sheet)]
    assert any({"fuse-block+", "step-down"} <= nets for nets in pieces)
    assert any({"step-down", "step-down+", "router"} <= nets for nets in pieces)
    text = " ".join(words_of(drawing))
    assert all(one in text for one in ("U1", "F801", "W801", "step down", "router"))


def test_what_goes_past_the_shunt_is_said():
    van = read_van(SOUND.replace('"shunt", ', "") + '\n[shunt]\nbypassed_by = "heater, tracker"\n')
    assert "Not counted by the shunt: heater, tracker" in words_of(layout(van))


def test_lines_are_level_or_upright():
    for name in DEMOS:
        for sheet in drawn(name).sheets:
            for line in (m for m in sheet.marks if isinstance(m, Line)):
                pairs = zip(line.points, line.points[1:], strict=False)
                assert all(ax == bx or ay == by for (ax, ay), (bx, by) in pairs)


def test_each_conductor_has_a_pole():
    assert {one.pole for one in demo("marram").net.conductors} == {PLUS, MINUS}


def test_the_check_itself_finds_what_is_wrong():
    """A word on a word, a line through a word, and two lines in one are told."""
    sheet = drawn("marram").sheets[0]
    word = next(m for m in sheet.marks if isinstance(m, Words))
    line = next(m for m in sheet.marks if isinstance(m, Line) and m.stroke == "plus")
    (x, y), (end, _) = line.points[:2]
    through = Line(((word.x - 5, word.y - 5), (word.x + 20, word.y - 5)), line.stroke, "a")
    for extra in (word._replace(x=word.x + 4), through, Line(((x, y), (end, y)), line.stroke, "b")):
        wrong = replace(sheet, marks=(*sheet.marks, extra))
        assert list(faults(Drawing("wrong", (wrong,))))
