"""The Python in the page against the Python on this machine: the same replies, to the letter.

Published cases, bad texts in every field, and every kind of link go through the worker's own door
in the browser. So what `tests/published` shows of one Python holds for the other.
"""

import json
import re
from collections.abc import Iterator

import pytest

import calc
from calc.render.bridge import ask
from evidence import load_cases
from tests.browser.sheet_helpers import BAD_TEXTS, EVERY_FIELD, STARTING, link_to, usual
from tests.browser.tools import VIEWPORTS
from tests.counts import some_of

# A worker of our own, so that the page and its newest-ask-only rule stay out of it.
OPEN_DOOR = """
    async (limit) => {
        const worker = new window.OwnWorker("../assets/worker.js", { type: "module" });
        const waiting = new Map();
        await new Promise((resolve, reject) => {
            setTimeout(() => reject(new Error("Python did not start")), limit);
            worker.onerror = reject;
            worker.onmessage = ({ data }) => {
                if (data.type === "ready") return resolve();
                waiting.get(data.id)?.(data.response ?? `failed: ${data.message}`);
                if (data.id === undefined) reject(new Error(data.message));
            };
        });
        window.askAll = (requests) => Promise.all(requests.map((request, id) =>
            new Promise((resolve) => {
                waiting.set(id, resolve);
                worker.postMessage({ type: "ask", id, request });
            })));
    }
"""


@pytest.fixture
def viewport():
    """A phone's: the replies do not depend on the window."""
    return VIEWPORTS["phone"]


def form(name: str, texts: dict[str, str], **units: str) -> str:
    return json.dumps({"sheet": name, "values": texts, "units": units})


def of_cases() -> list[str]:
    """A request for each published case."""
    return [form(case.worksheet, dict(case.inputs)) for case in load_cases()]


def of_bad_texts() -> Iterator[str]:
    """Each field gets a third of them, the next field the next: all are tried in every sheet."""
    for name in calc.worksheets():
        for place, field in enumerate(calc.find(name).fields):
            for text in BAD_TEXTS[place % 3 :: 3]:
                yield form(name, usual(name) | {field.id: text})


def of_forms_and_links() -> Iterator[str]:
    yield form("wire-drop", usual("wire-drop") | {"length": "3.6"}, length="m")
    yield form("runtime", usual("runtime") | {"load": "8"}, load="A")
    for name, texts in EVERY_FIELD.items():
        link = link_to(name, texts)
        yield form(name, texts)
        sheet = calc.find(name)
        for _ in sheet.stages(sheet.read(texts)[0]):  # one too many is answered with nothing
            yield json.dumps({"sheet": name, "rest": True})
        for fragment in ("", link, link[:60], re.sub(r"v=\d+", "v=99", link) + "&colour=%E0%A4%A"):
            yield json.dumps({"sheet": name, "fragment": fragment})
        yield json.dumps({"code": f"https://example.org/checks/{name}/{link}"})


@pytest.fixture
def compare(still, server):
    """Ask both Pythons the same, and fail on the first replies that differ."""
    page = still
    if not page.url.startswith(server.url):
        page.goto(server.url + "licences/")
        page.evaluate(OPEN_DOOR, STARTING)

    def compare(requests: list[str]) -> None:
        for start in range(0, len(requests), 50):
            batch = requests[start : start + 50]
            replies = page.evaluate("(requests) => window.askAll(requests)", batch)
            for request, theirs in zip(batch, replies, strict=True):
                assert theirs == ask(request), request

    return compare


def test_published_cases_give_the_same_reply(compare):
    compare(some_of(of_cases(), 300))


def test_bad_texts_give_the_same_reply(compare):
    compare(some_of(list(of_bad_texts()), 600))


def test_every_kind_of_form_and_link_gives_the_same_reply(compare):
    compare(list(of_forms_and_links()))
