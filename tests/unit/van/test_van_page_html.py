"""What a page about a van puts in as HTML: whole, labelled, and nothing of a stranger's is live."""

import json
import re
from html.parser import HTMLParser

import pytest

from calc.render.bridge import ask
from calc.van.demos import DEMOS
from calc.van.files import read_van
from calc.van.parts import PARTS

EVIL = ("<img src=x onerror=alert(1)>", '"><svg onload=alert(1)>', "\u202edrawkcab", "</script>")
ALLOWED = {
    "a", "article", "bdi", "br", "button", "caption", "circle", "datalist", "dd", "details", "div",
    "dl", "dt", "em", "fieldset", "figcaption", "figure", "form", "g", "h2", "h3", "input", "label",
    "legend", "li", "line", "ol", "optgroup", "option", "p", "path", "rect", "section", "select",
    "small", "span", "strong", "summary", "svg", "table", "tbody", "td", "template", "text", "th",
    "thead", "title", "tr", "tspan", "ul", "use",
}  # fmt: skip


def told(do: str, **more):
    return json.loads(ask(json.dumps({"van": {"do": do, **more}})))


def opened(source: str) -> str:
    return told("open", source=source)["text"]


@pytest.fixture(params=DEMOS)
def sample(request) -> str:
    return told("demo", name=request.param)["text"]


class Elements(HTMLParser):
    """Refuses whatever runs or fetches, and any element that no page of a van has."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.feed(html)

    def handle_starttag(self, tag, attributes):
        assert tag in ALLOWED, tag
        for name, value in attributes:
            assert not name.startswith("on") and name not in ("style", "src"), name
            assert not (value or "").lower().startswith("javascript:")


@pytest.mark.parametrize("evil", EVIL)
def test_what_a_stranger_named_is_text_in_every_view(evil):
    text = told("demo", name="ten-mistakes")["text"]
    data = json.loads(text)
    for own in data.values():
        for part in own if isinstance(own, list) else [own]:
            if isinstance(part, dict) and "name" in part:
                part["name"] = evil[:40]
    text = opened(json.dumps(data))
    views = ("parts", "review", "best", "diagram", "lists")
    replies = [told(do, text=text, id=evil, start=evil) for do in views]
    for kind in PARTS:
        place = f"{kind.id}[1]" if kind.many else kind.id
        replies.append(told("part", text=text, place=place, drafts={f"{place}.name": evil}))
    replies.append(told("sheet-links", text=text, place="circuits[2]", id=evil))
    for reply in replies:
        assert "html" in reply or "problems" in reply
        Elements(reply.get("html", ""))
        Elements(reply.get("verdict", ""))
        for mark in {**reply.get("marks", {}), **reply.get("lines", {})}.values():
            Elements(mark)


def test_every_id_stands_once_and_every_box_has_its_label(sample):
    van = read_van(sample)
    for part in van.everything():
        html = told("part", text=sample, place=part.place)["html"]
        ids = re.findall(r' id="([^"]+)"', html)
        assert len(ids) == len(set(ids))
        labelled = set(re.findall(r'<label for="([^"]+)"', html))
        boxes = re.findall(r'<(?:input|select) id="([^"]+)" name=', html)
        assert set(boxes) <= labelled
        for described in re.findall(r'aria-describedby="([^"]+)"', html):
            assert set(described.split()) <= set(ids)
