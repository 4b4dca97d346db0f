"""A made-up week, its picture taken apart, and what every picture has to keep to."""

import re
from dataclasses import dataclass
from math import pi, sin
from types import SimpleNamespace
from xml.etree import ElementTree

from calc.render.chart import chart_html
from calc.render.svg import TEXT, WIDTH
from calc.units.text_width import width
from calc.worksheet.pictures import Chart

OFF = 0.05 + 1e-9  # half of the drawing's last digit
START = 54  # where the days begin
CHART = Chart(
    states="states",
    lowest="lowest",
    floor="floor",
    nights="nights",
    sources=(
        ("sun", "sun_hours", "sun"),
        ("driving", "drive_hours", "drive"),
        ("shore", "shore_hours", "shore"),
    ),
    load=("load_hours", "load"),
    caption="Seven days in a lay-by.",
)
FLOWS = ("sun", "drive", "shore", "load")


def week(
    *, start=1.0, sun=90.0, drive=360.0, shore=420.0, load=70.0, floor=0.5, nights=True, days=7
):
    """Return a made-up week's answer: a bank of 2500 Wh that loses nothing."""
    states, hours = [start], {name: [] for name in FLOWS}
    for hour in range(24 * days):
        day, time = divmod(hour, 24)
        watts = {
            "sun": sun * max(0.0, sin((time - 7.5) / 8 * pi)) if 8 <= time < 16 else 0.0,
            "drive": drive if time == 10 and day % 2 == 0 else 0.0,
            "shore": shore if (day == 3 and time >= 18) or (day == 4 and time < 7) else 0.0,
            "load": load * (1.4 if time >= 17 else 0.8),
        }
        for name in FLOWS:
            hours[name].append(3600 * watts[name])
        gain = (watts["sun"] + watts["drive"] + watts["shore"] - watts["load"]) / 2500
        states.append(
            min(1.0, max(floor, states[-1] + gain) if states[-1] >= floor else states[-1])
        )
    dark = [(0.0, 7.5 * 3600)]
    dark += [(3600 * (24 * day + 16.25), 3600 * (24 * day + 31.5)) for day in range(days - 1)]
    dark += [(3600 * (24 * days - 7.75), 3600.0 * 24 * days)]
    values = {
        "states": tuple(states),
        "lowest": min(states),
        "floor": floor,
        "nights": tuple(dark) if nights else (),
        **{f"{name}_hours": tuple(hours[name]) for name in FLOWS},
        **{name: sum(hours[name]) for name in FLOWS},
    }
    shown = {name: f"{values[name] / 3600:.0f} Wh" for name in FLOWS}
    return SimpleNamespace(
        values=values, shown=dict(shown) | {"lowest": f"{100 * values['lowest']:.1f} %"}
    )


WEEKS = {
    "grey, with a night on a lead": {},
    "sun alone on a bank used to the bottom": {
        "sun": 300.0,
        "drive": 0.0,
        "shore": 0.0,
        "floor": 0.1,
    },
    "empty soon": {"sun": 10.0, "load": 140.0, "shore": 0.0},
    "never dark, large flows": {"sun": 1900.0, "drive": 9000.0, "load": 800.0, "nights": False},
    "empty to begin with": {"start": 0.3, "floor": 0.5, "sun": 0.0, "drive": 0.0, "shore": 0.0},
    "down to nothing": {"floor": 0.0, "load": 200.0, "sun": 0.0, "drive": 0.0, "shore": 0.0},
    "hardly anything": {"sun": 0.004, "drive": 0.0, "shore": 0.0, "load": 0.001},
    "an odd floor": {"floor": 0.8371, "sun": 12_000.0, "drive": 1.2e6},
    "one day": {"days": 1},
    "twenty days": {"days": 20},
}


@dataclass
class Drawn:
    """A drawing taken apart."""

    answer: SimpleNamespace
    html: str
    svg: ElementTree.Element
    whole: ElementTree.Element

    @property
    def values(self):
        return self.answer.values

    def of(self, tag, class_):
        return [one for one in self.svg.iter(tag) if class_ in one.get("class", "").split()]

    def path(self, class_):
        """Return the corners of each piece of the path, whatever letters it is written with."""
        pieces = []
        for one in self.of("path", class_):
            for letter, numbers in re.findall(r"([A-Za-z])([^A-Za-z]*)", one.get("d")):
                at = [float(number) for number in re.findall(r"-?[\d.]+", numbers)]
                if letter == "M":
                    pieces.append([tuple(at)])
                    continue
                x, y = pieces[-1][-1]
                match letter, at:
                    case "L", [across, down]:
                        x, y = across, down
                    case "l", [across, down]:
                        x, y = x + across, y + down
                    case "H", [across]:
                        x = across
                    case "h", [across]:
                        x += across
                    case "V", [down]:
                        y = down
                    case "v", [down]:
                        y += down
                    case _:
                        assert letter == "z", letter
                pieces[-1].append((x, y))
        return pieces

    def words(self):
        """Return each text with the box it may take: left, right, top, bottom."""
        for one in self.svg.iter("text"):
            wide = width(one.text, TEXT, "lw-strong" in one.get("class"))
            x, y = float(one.get("x")), float(one.get("y"))
            left = {"start": x, "middle": x - wide / 2, "end": x - wide}[one.get("text-anchor")]
            yield one.text, (left, left + wide, y - 12, y + 4)


def draw(**changes):
    answer = week(**changes)
    html = str(chart_html(answer, CHART))
    whole = ElementTree.fromstring(f"<div>{html}</div>")
    return Drawn(answer, html, whole.find("figure/svg"), whole)


def check_inside(drawn):
    """Nothing stands outside the drawing."""
    height = float(drawn.svg.get("viewBox").split()[3])
    for class_ in {one.get("class").split()[0] for one in drawn.svg.iter("path")}:
        for piece in drawn.path(class_):
            assert all(0 <= x <= WIDTH and 0 <= y <= height for x, y in piece), class_
    for one in drawn.svg.iter("rect"):
        x, y = float(one.get("x")), float(one.get("y"))
        assert x >= 0 and x + float(one.get("width")) <= WIDTH
        assert y >= 0 and y + float(one.get("height")) <= height
    for words, (left, right, top, bottom) in drawn.words():
        assert left >= 0 and right <= WIDTH, words
        assert top >= 0 and bottom <= height, words


def check_apart(drawn):
    """No words stand on other words."""
    boxes = list(drawn.words())
    for place, (words, one) in enumerate(boxes):
        for others, other in boxes[place + 1 :]:
            beside = one[1] <= other[0] or other[1] <= one[0]
            assert beside or one[3] <= other[2] or other[3] <= one[2], (words, others)
