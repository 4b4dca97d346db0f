"""What every engine must do, written once; a file of its own for each has it run in that engine.

A first visit starts Python from the files and saves the site. Then its server is killed for good,
and the page that is opened anew starts from the saved memory. All else is tried in that one visit.
"""

import json
from collections.abc import Iterator
from itertools import count

import pytest

import calc
from build_scripts.engine import Engine
from calc.render.bridge import ask
from calc.worksheet.fields import Quantity
from calc.worksheet.rows import Text
from tests.browser.asked import ASK_APART, expect_replies, of_each_sheet
from tests.browser.place import SAVED
from tests.browser.sheet_helpers import EVERY_FIELD, FOLLOW, MOVED, OPEN_FOLDS, reply_to, usual
from tests.browser.strange_links import NOTE, OPEN, UNHARMED, is_heading, strange_link, told
from tests.browser.tools import Server
from tests.counts import SOAK, chance, often, some_of
from tests.markup import text_of, tree

RUN = "wire-drop"

STATE = "() => document.documentElement.dataset.lugwise"
WAY = "() => document.documentElement.dataset.python"
LINE = "() => document.querySelector('[data-offline-line]').textContent"
CONTROLLED = "() => navigator.serviceWorker.controller?.state === 'activated'"

HIDE = "() => void Object.defineProperty(document, 'hidden', { get: () => true })"
"""The page believes that it is in a tab behind others, where the clock of a start stands still: a
machine with other work is no reason for Python to start in another way."""

SHOWN = """(name) => {
    const sheet = document.querySelector(`[data-sheet=${name}]`);
    const words = (part) => {
        const place = sheet.querySelector(`[data-${part}]`);
        return [part, place.textContent.replace(/\\s+/g, " ").trim()];
    };
    const isStale = !sheet?.querySelector("[data-standing]").hidden;
    return isStale ? {} : Object.fromEntries(["gist", "key", "answer"].map(words));
}"""

MARK = f"""(name, field) => {{
    const box = document.querySelector(`[data-sheet=${{name}}] [name=${{field}}]`);
    ({OPEN_FOLDS})(box);
    box.focus();
    box.select();
}}"""

SHORT = 2_000  # characters of a link that is opened cold in a run
PACE = 250
"""Milliseconds a link: of more the engines take no notice."""

PANEL = """(name) => {
    const panel = document.querySelector(`[data-${name}]`);
    panel.querySelector("[data-best]")?.replaceChildren();
    return panel.textContent.replace(/\\s+/g, " ").trim();
}"""

PRESS = "(selector) => document.querySelector(selector).click()"
THERE = "(selector) => Boolean(document.querySelector(selector))"
HEADING = "() => document.querySelector('h1').textContent.trim()"


def squeezed(html: str) -> str:
    """Return the words of some HTML, with single spaces."""
    return " ".join(text_of(tree(html)).split())


class Visit:
    """A visit to the site in an engine."""

    def __init__(self, engine: Engine, url: str) -> None:
        self.engine, self.url = engine, url
        self.ways: list[str] = []
        """How Python started in each sheet that was opened anew, as the page says it."""

    def open(self, path: str) -> None:
        """Open a page anew."""
        self.engine.open(self.url + path)
        self.engine.run(HIDE)

    def open_sheet(self, path: str) -> None:
        """Open a sheet anew, and wait for Python."""
        self.open(path)
        self.engine.wait_for(STATE, wanted="ready")
        self.ways.append(self.engine.run(WAY))

    def move(self, path: str) -> None:
        """Go to a page by a link, so that Python stays."""
        self.engine.run(FOLLOW, self.url + path)
        self.engine.wait_for(MOVED)

    def expect_answer(self, name: str, texts: dict[str, str]) -> None:
        """Wait until the whole answer, word for word, is this machine's for `texts`."""
        reply = reply_to(name, texts)
        wanted = {part: squeezed(reply[part]) for part in ("gist", "key", "answer")}
        assert all(wanted.values()), f"this machine refuses {texts}: {reply['status']}"
        self.engine.wait_for(SHOWN, name, wanted=wanted)

    def type(self, name: str, field: str, text: str) -> None:
        """Press the keys of a text over what stands in a box."""
        self.engine.run(MARK, name, field)
        self.engine.press(f"[data-sheet={name}] [name={field}]", text)


def typed(name: str) -> tuple[str, str]:
    """Return a sheet's first field that one types into, and a text that is not its usual one."""
    texts, usual_inputs = EVERY_FIELD[name], calc.work(name, {}).inputs
    return next(
        (field.id, texts[field.id])
        for field in calc.find(name).fields
        if isinstance(field, Quantity | Text)
        and usual_inputs[field.id].applies
        and texts[field.id] != field.default
    )


class EngineTests:
    """The tests. A subclass whose name begins with Test says which engine."""

    engine: type[Engine]

    @pytest.fixture(scope="class")
    @classmethod
    def saved(cls, site, tmp_path_factory) -> Iterator[Visit]:
        """A visit that has saved the site, and whose server has gone for good."""
        server = Server(site)
        try:
            with cls.engine(tmp_path_factory.mktemp("engine")) as engine:
                visit = Visit(engine, server.url)
                visit.open_sheet(f"checks/{RUN}/")
                visit.expect_answer(RUN, usual(RUN))
                engine.wait_for(f"() => /{SAVED.pattern}/.test(({LINE})())")
                engine.wait_for(CONTROLLED)
                server.kill()
                visit.open_sheet(f"checks/{RUN}/")
                yield visit
        finally:
            if server.process.poll() is None:
                server.kill()

    @pytest.fixture(autouse=True)
    def clean(self, saved: Visit) -> Iterator[list[str]]:
        """No error in a page, but those of which a part is added here; nothing asked elsewhere."""
        expected: list[str] = []
        yield expected
        errors = [
            error[:2_000]
            for error in saved.engine.errors()
            if not any(part in error for part in expected)
        ]
        assert not errors, f"errors in the console: {errors}"
        outside = saved.engine.trap.caught()
        assert not outside, f"requests to outside: {outside}"

    def test_a_first_visit_starts_from_the_files_and_a_saved_site_from_its_memory(self, saved):
        assert saved.ways == ["files", "memory"]

    @pytest.mark.parametrize("chapter", calc.chapters(), ids=lambda chapter: chapter[0])
    def test_without_a_server_every_sheet_answers_as_this_machine_does(self, saved, chapter):
        _, names = chapter
        for name in names:
            saved.move("licences/")
            saved.move(f"checks/{name}/")
            saved.expect_answer(name, usual(name))
            field, text = typed(name)
            saved.type(name, field, text)
            saved.expect_answer(name, usual(name, **{field: text}))

    def test_its_python_replies_to_the_letter_what_this_machine_does(self, saved):
        asked = some_of(of_each_sheet(), 40)
        expect_replies(asked, saved.engine.run(ASK_APART, asked))

    def test_without_a_server_a_sample_van_is_reviewed_as_this_machine_does(self, saved):
        saved.move("van/")
        saved.engine.wait_for(THERE, "[data-start]:not([hidden]) [data-demo=ten-mistakes]")
        saved.engine.run(PRESS, "[data-start] [data-demo=ten-mistakes]")
        made = json.loads(ask(json.dumps({"van": {"do": "demo", "name": "ten-mistakes"}})))
        van = {"text": made["text"], "drafts": {}, "do": "review"}
        review = json.loads(ask(json.dumps({"van": van})))
        saved.engine.wait_for(PANEL, "verdict", wanted=squeezed(review["verdict"]))
        saved.engine.run(PRESS, "[data-tab=review]")
        wanted = squeezed(review["html"])
        saved.engine.wait_for(PANEL, "panel-review", wanted=wanted)

    def test_strange_links_are_read_as_on_a_desk_and_harm_nothing(self, saved):
        draw = chance("strange links", self.engine.name)
        names = draw.sample(calc.worksheets(), often(2, len(calc.worksheets())))
        for name in names:
            saved.move("licences/")
            saved.move(f"checks/{name}/")
            saved.expect_answer(name, usual(name))
            saved.engine.run(NOTE)
            for _ in range(often(24, 2_250) // len(names)):
                link = strange_link(draw, name)
                if is_heading(link):
                    continue
                written, _ = saved.engine.run(OPEN, [link, PACE])
                read = saved.engine.run("() => location.hash")  # as the engine writes it
                assert written.partition("#")[2] == told(read[1:], name), link[:2_000]
                assert not saved.engine.run(UNHARMED), link[:2_000]

    def test_strange_links_that_are_opened_cold_harm_nothing(self, saved, clean):
        """A load of megabytes may take longer than a test of a run waits: there they are short."""
        clean += ["error loading dynamically imported module"]  # of a page left while it loads
        draw = chance("cold links", self.engine.name)
        for _ in range(often(1, 250)):
            name = draw.choice(calc.worksheets())
            links = (strange_link(draw, name) for _ in count())
            link = next(one for one in links if SOAK or len(one) < SHORT)
            saved.open("licences/")
            saved.open_sheet(f"checks/{name}/#{link}")
            saved.engine.run(NOTE)
            assert not saved.engine.run(UNHARMED), link[:2_000]

    def test_a_missing_page_without_a_server_is_our_own(self, saved, clean):
        clean += ["404", "favicon.ico"]  # of which that page has none
        for path in ("no/such/page/", "%", "no-such-file.html"):
            saved.open(path)
            saved.engine.wait_for(STATE, wanted="found")  # where the site begins
            assert saved.engine.run(HEADING) == "There is no page here"
