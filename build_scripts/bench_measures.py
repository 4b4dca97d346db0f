"""How the built site is measured in Chromium: starts, keystrokes, bytes, a network.

Each start is a fresh browser process on a saved site whose server has been ended. Times run from
the start of the navigation, by the page's own clock.
"""

import contextlib
import json
import os
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from playwright.sync_api import BrowserContext, BrowserType, Page

import calc
from build_scripts import bench_network
from build_scripts.bench_plain import evaluated, write_plain_site
from build_scripts.server import COMPRESSED, SiteHandler, SiteServer, compressed
from build_scripts.site_list import list_files, type_of

PROJECT = Path(__file__).resolve().parent.parent
SITE = PROJECT / "site"
SHEET = "wire-drop"
PATH = f"checks/{SHEET}/"
KEYSTROKES = 100
REST = 10  # seconds in which a launched browser must have come to rest
IDLE = 0.03  # seconds of processor, of 0.3, below which it has
PATIENCE = 90  # seconds for one start: far beyond any that is worth measuring

BROWSER = {
    "executable_path": os.environ.get("LUGWISE_CHROMIUM", "/usr/bin/chromium"),
    "args": [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-background-networking",
        "--no-first-run",
        "--disable-sync",
        "--disable-component-update",
    ],
}

CLOCK = """
new MutationObserver((_, watcher) => {
  if (document.documentElement?.dataset.lugwise !== "ready") return;
  watcher.disconnect();
  window.benchReady = performance.now();
}).observe(document, { attributes: true, childList: true, subtree: true });
"""

# Not `ready`: where saving fails that promise never settles, and no time limit would be heard.
SAVED = "navigator.serviceWorker.getRegistration().then((found) => !!found?.active)"

KEY_CLOCK = """() => {
  const sheet = document.querySelector("[data-sheet]");
  let [from, begun] = [null, null];
  Object.assign(window, { benchKeys: [], benchFolds: [] });
  document.addEventListener("input", (event) => (from = event.timeStamp), true);
  new MutationObserver((changes) => {
    const now = performance.now();
    if (from !== null && changes.some(({ type }) => type === "attributes")) {
      window.benchKeys.push(now - from);
      [from, begun] = [null, from];
    }
    if (begun !== null && sheet.querySelector("[data-fold=working] > :not(summary)")) {
      window.benchFolds.push(now - begun);
      begun = null;
    }
  }).observe(sheet, { attributes: true, childList: true, subtree: true, attributeFilter: ["data-seq"] });
}"""  # noqa: E501


@contextlib.contextmanager
def served(root: Path) -> Iterator[str]:
    """Serve a folder from a process of its own, so that ending it leaves no open connection."""
    command = [sys.executable, "-u", "-m", "build_scripts.server", "--root", root, "--port", "0"]
    process = subprocess.Popen(command, cwd=PROJECT, stdout=subprocess.PIPE, text=True)
    try:
        yield next(word for word in process.stdout.readline().split() if word.startswith("http"))
    finally:
        process.kill()
        process.wait()
        process.stdout.close()


def wait_for(page: Page, expression: str, seconds: float = PATIENCE):
    """The value of a JavaScript expression once it is truthy. Raises TimeoutError."""
    # wait_for_function would need eval, which the site's policy forbids.
    end = time.monotonic() + seconds
    while not (value := page.evaluate(expression)):
        if time.monotonic() > end:
            raise TimeoutError(f"{page.url}: {expression} did not come in {seconds} s")
        time.sleep(0.02)
    return value


def first_answer(context: BrowserContext, url: str) -> tuple[Page, float]:
    """Open a page, and tell how many milliseconds passed until its first live answer."""
    page = context.new_page()
    page.add_init_script(CLOCK)
    page.goto(url, wait_until="commit")
    return page, wait_for(page, "window.benchReady")


@contextlib.contextmanager
def browser(chromium: BrowserType, profile: Path) -> Iterator[BrowserContext]:
    """A fresh browser process at rest, that keeps its storage in the folder `profile`."""
    context = chromium.launch_persistent_context(profile, **BROWSER)
    try:
        rest()
        yield context
    finally:
        context.close()


def rest() -> None:
    """Wait until the browsers of this process do nothing, REST at most.

    For a second after its launch, a browser with windows loads pages of its own: whoever begins to
    measure at once measures those as well.
    """
    end = time.monotonic() + REST
    before = processor_time()
    while time.monotonic() < end:
        time.sleep(0.3)
        now = processor_time()
        if now - before < IDLE:
            return
        before = now


def processor_time() -> float:
    """Seconds of processor that all that this process has started has taken so far."""
    return sum(ticks for _, ticks, _ in descendants()) / os.sysconf("SC_CLK_TCK")


def descendants() -> list[tuple[int, int, bytes]]:
    """What this process has started: each one's number, its ticks of processor, its command."""
    parents, found = {}, []
    for folder in Path("/proc").iterdir():
        if folder.name.isdecimal():
            with contextlib.suppress(OSError):
                stat = (folder / "stat").read_text().rpartition(")")[2].split()
                parents[int(folder.name)] = int(stat[1])
                ticks = int(stat[11]) + int(stat[12])
                found.append((int(folder.name), ticks, (folder / "cmdline").read_bytes()))

    def is_ours(process: int) -> bool:
        while process > 1 and process != os.getpid():
            process = parents.get(process, 0)
        return process == os.getpid()

    return [one for one in found if one[0] != os.getpid() and is_ours(one[0])]


class CountingHandler(SiteHandler):
    """Counts every byte it sends, headers and all."""

    def setup(self):
        super().setup()
        write, server = self.wfile.write, self.server

        def count_and_write(content):
            server.sent += len(content)
            return write(content)

        self.wfile.write = count_and_write


def bytes_to_answer(chromium: BrowserType, root: Path, path: str) -> int:
    """Bytes that a first visit brings over the wire until its first live answer.

    Without the service worker, which goes on to save the rest of the site meanwhile.
    """
    server = SiteServer(("127.0.0.1", 0), CountingHandler, root)
    server.sent = 0
    threading.Thread(target=server.serve_forever, daemon=True).start()
    opened = chromium.launch(**BROWSER)
    try:
        context = opened.new_context(service_workers="block")
        first_answer(context, f"http://127.0.0.1:{server.server_port}/{path}")
        return server.sent
    finally:
        opened.close()
        server.shutdown()
        server.server_close()


def keystrokes(
    chromium: BrowserType, slowed: Callable[[], contextlib.AbstractContextManager]
) -> tuple[list[float], list[float]]:
    """Milliseconds from each keystroke in a field to the new answer, while the page is `slowed`.

    To all of it that is seen, and to what is folded away. The next key comes when both are there.
    """
    with served(SITE) as address:
        opened = chromium.launch(**BROWSER)
        page, _ = first_answer(opened.new_context(service_workers="block"), address + PATH)
        page.evaluate(KEY_CLOCK)
        page.click(f"#{SHEET}-current")
        page.keyboard.press("End")
        with slowed():
            for number in range(KEYSTROKES):
                page.keyboard.press("Backspace" if number % 2 else "5")
                wait_for(page, f"window.benchFolds.length > {number}", 10)
        times = page.evaluate("[window.benchKeys, window.benchFolds]")
        opened.close()
    return times[0], times[1]


def network_times(chromium: BrowserType, work: Path) -> list[float]:
    """Milliseconds for each solving of the network in `bench_network`, by the browser's Python."""
    root = work / "network"
    write_plain_site(root, evaluated(Path(bench_network.__file__), "solve_times()"))
    with served(root) as address:
        opened = chromium.launch(**BROWSER)
        page, _ = first_answer(opened.new_context(service_workers="block"), address)
        times = json.loads(page.locator("p").inner_text())
        opened.close()
    return times


def reads_without_scripts(chromium: BrowserType) -> bool:
    """Whether the default answer stands in the page where JavaScript is off."""
    with served(SITE) as address:
        opened = chromium.launch(**BROWSER)
        page = opened.new_context(java_script_enabled=False).new_page()
        page.goto(address + PATH)
        shown = page.locator(f"[data-sheet={SHEET}] [data-gist]").inner_text()
        opened.close()
    return " ".join(calc.work(SHEET).sentence.split()) in " ".join(shown.split())


def whole_site() -> tuple[int, int]:
    """Bytes of everything that is saved: as our own server sends it, and as it is stored."""
    wire = stored = 0
    for path, (_, size) in list_files(SITE).items():
        file = SITE / path
        packed = type_of(path).startswith(COMPRESSED)
        wire += len(compressed(file, file.stat().st_mtime_ns, size)) if packed else size
        stored += size
    return wire, stored
