"""Every sheet's picture, drawn from sampled answers: words apart, inside and as large as a page's.

Words are measured by a table as broad as any face that systems use (`calc.units.text_width`).
"""

import re
from types import SimpleNamespace
from xml.etree import ElementTree

import pytest

import calc
from calc.render.drawings import picture_html
from calc.render.svg import PITCH, WIDTH
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.pictures import Chart
from tests.contract.samples import along, drawn, sheets, single
from tests.counts import chance, often
from tests.unit.drawing import Drawn, check_apart, check_inside

PHONE = 780  # px: at 360 px a unit of a drawing is a pixel
MOST_HEIGHT = 0.45 * PHONE
MOST_BYTES, MOST_DAYS = 6_000, 16_000
NAMES = [sheet.id for sheet in sheets()]


def answers(name: str):
    """Yield answers at rest, with each field at its ends, and of drawn inputs."""
    sheet = calc.find(name)
    random = chance("pictures", name)
    times = often(8, 400) // (5 if sheet.later_stages else 1)
    ends = single(sheet)
    for texts in (
        {},
        *random.sample(ends, min(len(ends), 2 * times)),
        *drawn(sheet, random, times),
    ):
        try:
            yield calc.work(name, texts)
        except InputError:
            continue


def every(answer: Answer) -> list[Drawn]:
    """Return the pictures of an answer, those in folds too."""
    html = str(picture_html(answer))
    whole = ElementTree.fromstring(f"<div>{html}</div>")
    figures = [figure for figure in whole.iter("figure") if figure.find("svg") is not None]
    return [
        Drawn(SimpleNamespace(), ElementTree.tostring(one, "unicode"), one.find("svg"), one)
        for one in figures
    ]


def taken_apart(answer: Answer) -> Drawn | None:
    return next(iter(every(answer)), None)


@pytest.mark.parametrize("name", NAMES)
def test_a_picture_is_clear_at_every_value(name):
    """Words stay inside and off one another, and what is strong stands in the alternative too."""
    seen = 0
    most = MOST_DAYS if isinstance(calc.find(name).picture, Chart) else MOST_BYTES
    for answer in answers(name):
        for picture in every(answer):
            seen += 1
            check_inside(picture)
            check_apart(picture)
            assert not re.search(r'="[^"a-z]*(?:nan|inf)\b', picture.html)
            height = float(picture.svg.get("viewBox").split()[3])
            assert PITCH < height <= MOST_HEIGHT, answer.inputs
            assert len(str(ElementTree.tostring(picture.svg))) < most
            said = picture.svg.get("aria-label").lower()
            for one in picture.of("text", "lw-strong"):
                assert one.text.endswith("…") or one.text.lower() in said, (one.text, said)
    assert seen, "no sampled answer has a picture"


def test_every_sheet_has_a_picture():
    assert [name for name in NAMES if calc.find(name).picture is None] == []


def test_what_breaks_a_limit_is_marked_and_what_keeps_it_is_not():
    """The bank runs the load for 20.4 h, with all that its label says for 25.6 h."""
    for needed, over in (("8 h", 0), ("21 h", 1), ("30 h", 2)):
        picture = taken_apart(calc.work("runtime", {"needed": needed}))
        assert len(picture.of("rect", "lw-over")) == over
        assert len(picture.of("line", "lw-dashed")) >= 2


def test_bars_are_as_long_as_their_values():
    answer = calc.work("appliance-route", {})
    picture = taken_apart(answer)
    direct, household = (float(one.get("width")) for one in picture.of("rect", "lw-bar"))
    assert direct / household == pytest.approx(
        answer.values["dc_charge"] / answer.values["ac_charge"], abs=0.005
    )
    (idle,) = (
        float(o.get("width"))
        for o in picture.of("rect", "lw-copper")
        if float(o.get("width")) != 14
    )
    assert idle / household == pytest.approx(
        answer.values["idle_charge"] / answer.values["ac_charge"], abs=0.005
    )


def test_parts_of_a_whole_fill_its_bar():
    answer = calc.work("heat-loss", {})
    picture = taken_apart(answer)
    bar = [one for one in picture.svg.iter("rect") if one.get("height") == "22.0"][1:]
    widths = [float(one.get("width")) for one in bar]
    assert sum(widths) == pytest.approx(WIDTH - 4, abs=0.5)
    loss = answer.values["loss"]
    assert widths[0] / sum(widths) == pytest.approx(answer.values["wall_loss"] / loss, abs=0.01)


ON_MINUS = {"bank_minus", "lug_minus", "ground", "ground_lug", "return_lug", "far_minus"}


def test_probes_stand_on_the_wire_that_the_step_names():
    """Red from above and black from below, with their tips on a joint; a clamp around it."""
    sides, seen = set(), set()
    for texts in along(calc.find("find-fault")):
        answer = calc.work("find-fault", texts)
        step = answer.result.at.step
        key = step and (step.red, step.black, step.clamp, answer.result.way_in.charging)
        if key in seen:
            continue
        seen.add(key)
        picture = taken_apart(answer)
        places = [place for place in (step.red, step.black, step.clamp) if place] if step else []
        if picture is None:
            off = ("block_", "link_", "like_", "signal_", "gauge")
            assert not places or any(place.startswith(off) for place in places)
            continue
        joints = [
            (float(o.get("cx")), float(o.get("cy"))) for o in picture.of("circle", "lw-joint")
        ]
        plus, minus = sorted({high for _, high in joints})
        rings = picture.of("ellipse", "lw-clamp")
        marks = {
            step.red: [piece[0] for piece in picture.path("lw-probe-red")],
            step.black: [piece[0] for piece in picture.path("lw-probe-black")],
            step.clamp: [(float(one.get("cx")), float(one.get("cy"))) for one in rings],
        }
        assert sum(map(len, marks.values())) == len(places)
        for place in places:
            ((x, y),) = marks[place]
            level = minus if place in ON_MINUS | {"input_minus"} else plus
            assert abs(y - level) <= 4
            assert any(abs(x - at) < 1 for at, high in joints if high == level)
            sides.add(place)
    assert sides >= ON_MINUS | {
        "bank_plus",
        "fuse_in",
        "fuse_out",
        "run_lug",
        "far_lug",
        "far_plus",
    }
