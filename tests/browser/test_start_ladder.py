"""Python's ways to start: from a saved memory, then from the files, then the built page in words.

Each way is tried, and each is broken to see that the next one takes over.
"""

import base64
import gzip
import hashlib
import json

import pytest
from playwright.sync_api import Page, expect

from tests.browser.asked import ASK, expect_replies, of_each_sheet
from tests.browser.place import Place, drop
from tests.browser.sheet_helpers import Sheet, link_to, usual
from tests.browser.standing import NO_FILE, expect_standing
from tests.browser.tools import VIEWPORTS

NAMED = """
  window.starts = [];
  window.Worker = class extends Worker {
    constructor(url, options) {
      super(url, options);
      if (String(url).endsWith("/assets/worker.js")) window.starts.push(options.name.split(" ")[0]);
      window.byHead ??= Boolean(document.currentScript); // a module is none
    }
  };
"""

SPOIL = """async ([hash, how, words]) => {
  const cache = await caches.open("lugwise-files");
  const key = (await cache.keys()).find(({ url }) => url.endsWith(hash));
  const bytes = new Uint8Array(await (await cache.match(key)).arrayBuffer());
  if (how === "flip") bytes[bytes.length / 2 | 0] ^= 1;
  const cut = how === "cut" ? bytes.slice(0, bytes.length / 2 | 0) : bytes;
  await cache.put(key, new Response(words ?? cut));
}"""

BROKEN = ["the saved memory", "begins otherwise", "was truncated", "not valid", "Failed to fetch"]
BROKEN += ["net::ERR_FAILED", "could not be loaded"]
"""What the browser's console says of files that the test has broken."""

RESTORE = """async ([hash, bytes]) => {
  const cache = await caches.open("lugwise-files");
  const key = (await cache.keys()).find(({ url }) => url.endsWith(hash));
  await cache.put(key, new Response(Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))));
}"""

ADD = """async ([key, bytes]) => {
  const cache = await caches.open("lugwise-files");
  await cache.put(key, new Response(Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))));
}"""

HANGS = """
  window.starts = [];
  window.Worker = class extends Worker {
    constructor(url, options) {
      super(url, options);
      if (String(url).endsWith("/assets/worker.js")) window.starts.push(options.name.split(" ")[0]);
      this.dead = options.name.startsWith("memory ");
    }
    set onmessage(hear) {
      super.onmessage = (event) => this.dead || hear(event);
    }
  };
"""


@pytest.fixture
def viewport():
    """A phone's: how Python starts does not depend on the window."""
    return VIEWPORTS["phone"]


def open_sheet(place: Place, script: str = NAMED, path: str = "checks/wire-drop/") -> Page:
    """Open a sheet in a fresh tab that notes how its Python starts."""
    page = place.context.new_page()
    page.add_init_script(script)
    page.goto(place.server.url + path)
    return page


def wait_until_ready(page: Page) -> None:
    expect(page.locator("html")).to_have_attribute("data-lugwise", "ready", timeout=60_000)


def starts(page: Page) -> list[str]:
    """The ways that were tried; the last of them is the one by which Python says it came."""
    tried = page.evaluate("() => window.starts")
    assert page.locator("html").get_attribute("data-python") == tried[-1]
    return tried


def box_answers(page: Page) -> None:
    """What is typed is answered."""
    answer = page.locator("[data-sheet] [data-answer]")
    before = answer.text_content()
    page.locator("[data-sheet] input[name=current]").fill("77")
    expect(answer).not_to_have_text(before)


def test_a_saved_site_starts_from_its_memory_and_knows_every_sheet(saved):
    """Each sheet as it opens, and changed: as Python on a desk says it, to the letter.

    The changes come at once, before the restored Python has the files of its modules.
    """
    page = open_sheet(saved)
    wait_until_ready(page)
    assert starts(page) == ["memory"]
    assert page.evaluate("() => window.byHead")  # and taken over, for there is no other
    asked = of_each_sheet()
    replies = page.evaluate(ASK, asked)
    expect_replies(asked, replies)
    box_answers(page)
    page.close()


@pytest.mark.parametrize(
    ("name", "changes"),
    [("week-ahead", {}), ("week-ahead", {"array": "300 W"}), ("wire-drop", {"current": "41 A"})],
    ids=["stages", "stages of a link", "the sheet of the known question by a link"],
)
def test_an_answer_is_whole_after_a_start_from_memory(saved, name, changes):
    """Its stages and its folds are asked for after a question whose reply is known."""
    texts = usual(name, **changes)
    page = open_sheet(saved, path=f"checks/{name}/{link_to(name, texts) if changes else ''}")
    sheet = Sheet(page, name)
    sheet.expect_worked()  # the built answer has the same words
    sheet.expect_answer(texts)
    assert starts(page) == ["memory"]
    page.close()


def of_other_replies(place: Place) -> dict[str, str]:
    """An edition whose memory must give another answer than it does: the files that tell of it."""
    start, page = "assets/runtime/boot.json", "checks/wire-drop/index.html"
    held = (place.root / start).read_bytes()
    boot = json.loads(held)
    boot["memory"]["replies"] = ["0" * 64]
    other = json.dumps(boot)
    before, after = (hashlib.sha256(text).hexdigest() for text in (held, other.encode()))
    return {start: other, page: (place.root / page).read_text("utf-8").replace(before, after)}


@pytest.mark.parametrize("how", ["flip", "cut", "unknown"])
def test_a_memory_that_is_not_right_gives_way_to_the_files(saved, how):
    """Flipped, cut, or one that does not give the known answer; and that tab tries it no more."""
    saved.expected = BROKEN
    others: dict[str, str | None] = {"assets/runtime/memory.bin": None}
    if how == "unknown":
        others = of_other_replies(saved)
    page = open_sheet(saved)
    wait_until_ready(page)
    for file, words in others.items():
        page.evaluate(SPOIL, [saved.files[file][0], how, words])
    page.reload()
    wait_until_ready(page)
    assert starts(page) == ["memory", "files"]
    box_answers(page)
    page.reload()
    wait_until_ready(page)
    assert starts(page) == ["files"]
    for file in others:
        held = base64.b64encode((saved.root / file).read_bytes()).decode()
        page.evaluate(RESTORE, [saved.files[file][0], held])
    page.close()


def test_a_memory_that_another_program_was_saved_with_gives_way_to_the_files(saved):
    """What a new module holds is not in it, and is believed by its hash: here a wrong one."""
    saved.expected = BROKEN
    file, path = saved.root / "assets/runtime/memory.bin", "checks/wire-drop/index.html"
    content = bytearray(gzip.decompress(file.read_bytes()))
    content[12] ^= 1  # of that hash
    other = gzip.compress(content)
    before, after = (hashlib.sha256(one).hexdigest() for one in (file.read_bytes(), other))
    html = (saved.root / path).read_text("utf-8")
    page = open_sheet(saved)
    wait_until_ready(page)
    page.evaluate(ADD, [f"{saved.server.url}_b/{after}", base64.b64encode(other).decode()])
    page.evaluate(SPOIL, [saved.files[path][0], "unknown", html.replace(before, after)])
    with page.expect_console_message(lambda said: "begins otherwise" in said.text):
        page.reload()
    wait_until_ready(page)
    assert starts(page) == ["memory", "files"]
    page.evaluate(SPOIL, [saved.files[path][0], "unknown", html])
    page.close()


def test_a_memory_that_hangs_gives_way_after_its_own_time(saved):
    page = saved.context.new_page()
    page.add_init_script(HANGS)
    page.clock.install()
    page.goto(saved.server.url + "checks/wire-drop/")
    page.clock.run_for(16_000)
    wait_until_ready(page)
    assert starts(page) == ["memory", "files"]
    box_answers(page)
    page.close()


FAILS_AS_IT_IS_LEFT = """
  const Made = window.Worker;
  const data = { type: "failed", message: "broke off" };
  window.Worker = class extends Made {
    constructor(url, options) {
      super(url, options);
      if (!options.name.startsWith("memory ") || sessionStorage.getItem("left")) return;
      this.terminate();
      addEventListener("load", () => {
        sessionStorage.setItem("left", "1");
        this.dispatchEvent(new MessageEvent("message", { data }));
        location.reload();
      });
    }
  };
"""


def test_a_start_that_is_broken_off_as_the_page_is_left_spoils_no_later_one(saved):
    """As Firefox does on a reload, and tells the page that goes: the next start is not slower."""
    page = open_sheet(saved, NAMED + FAILS_AS_IT_IS_LEFT)
    page.wait_for_function("() => sessionStorage.getItem('left')")
    wait_until_ready(page)
    assert starts(page) == ["memory"]
    page.close()


def test_where_no_memory_is_saved_the_same_worker_starts_from_the_files(saved):
    """Without an error, and so the tab looks for it again the next time."""
    digest, _ = saved.files["assets/runtime/memory.bin"]
    held = (saved.root / "assets/runtime/memory.bin").read_bytes()
    page = open_sheet(saved)
    wait_until_ready(page)
    drop(page, digest)
    page.reload()
    wait_until_ready(page)
    assert page.evaluate("() => window.starts") == ["memory"]
    assert page.locator("html").get_attribute("data-python") == "files"
    key = f"{saved.server.url}_b/{digest}"
    page.evaluate(ADD, [key, base64.b64encode(held).decode()])
    page.reload()
    wait_until_ready(page)
    assert starts(page) == ["memory"]
    page.close()


@pytest.mark.parametrize("file", ["pyodide.asm.wasm.bin", "pyodide.js", "pyodide.asm.js"])
def test_where_a_file_of_the_start_cannot_come_that_is_said(saved, file):
    """And not that the browser is to blame: the list of what to start with is there."""
    saved.expected = BROKEN
    path = f"assets/runtime/{file}"
    digest, held = saved.files[path][0], (saved.root / path).read_bytes()
    page = open_sheet(saved)
    wait_until_ready(page)
    drop(page, digest)
    page.reload()
    expect_standing(Sheet(page, "wire-drop"), NO_FILE)
    key = f"{saved.server.url}_b/{digest}"
    page.evaluate(ADD, [key, base64.b64encode(held).decode()])
    page.close()


def test_where_neither_way_works_the_page_says_so(saved):
    """The built answer stays, and the reader is told that no other can come."""
    saved.expected = BROKEN
    page = open_sheet(saved)
    wait_until_ready(page)
    for file in ("memory.bin", "app.zip.bin"):
        page.evaluate(SPOIL, [saved.files[f"assets/runtime/{file}"][0], "cut", None])
    page.reload()
    sheet = Sheet(page, "wire-drop")
    answer = sheet.answer.text_content()
    expect_standing(sheet, NO_FILE)
    assert sheet.answer.text_content() == answer
    page.close()
