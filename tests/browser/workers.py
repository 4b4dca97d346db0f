"""The page's worker in a test's hands: ended, gone deaf, or held back reply by reply.

It is the site's own worker all along, with Python in it; only what reaches the page is changed.
"""

from datetime import datetime, timedelta

from playwright.sync_api import Page

from tests.browser.sheet_helpers import Sheet, open_sheet
from tests.browser.tools import Server

HANDLED = """
  window.workers = [];
  window.deaf = false;  // asks no longer reach it
  window.held = null;  // replies that wait, where the test holds them back
  window.garbled = false;  // replies come without their first letter
  window.Worker = class extends Worker {
    constructor(...way) {
      super(...way);
      if (String(way[0]).endsWith("/assets/worker.js")) window.workers.push(this);
      this.over = this.ready = false;
    }
    postMessage(message) {
      if (!window.deaf) super.postMessage(message);
    }
    terminate() {
      this.over = true;
      super.terminate();
    }
    set onmessage(hear) {
      super.onmessage = ({ data }) => {
        if (window.garbled && data.response) data.response = data.response.slice(1);
        if (window.held && data.type === "answer") window.held.push(() => hear({ data }));
        else hear({ data });
        if (data.type === "ready") this.ready = true;
      };
    }
  };
"""
"""A script for pages on which the test takes the worker in hand."""

REFUSED = """window.Worker = class {
  constructor() { setTimeout(() => this.onerror?.(new Event("error"))); }
  postMessage() {}
  terminate() {}
}"""
"""A script for pages on which Python cannot be loaded."""


class Workers:
    """The workers with Python that a page has made, and the page's clock, which stands still."""

    def __init__(self, page: Page) -> None:
        self.page = page

    @property
    def made(self) -> int:
        return self.page.evaluate("() => window.workers.length")

    @property
    def alive(self) -> int:
        return self.page.evaluate("() => window.workers.filter((worker) => !worker.over).length")

    def end(self) -> None:
        """End the worker as the system does: nobody is told."""
        self.page.evaluate("() => window.workers.at(-1).terminate()")

    def deafen(self, deaf: bool = True) -> None:
        """From now on no ask reaches Python, in any worker."""
        self.page.evaluate("(deaf) => { window.deaf = deaf; }", deaf)

    def garble(self) -> None:
        """From now on no reply can be read."""
        self.page.evaluate("() => { window.garbled = true; }")

    def hold(self) -> None:
        """Hold back each reply until it is released."""
        self.page.evaluate("() => { window.held = []; }")

    def release(self) -> None:
        """Let the next reply through, once it is there."""
        self.until("() => window.held.length > 0")
        self.page.evaluate("() => window.held.shift()()")

    def wait_for_start(self) -> None:
        """Wait until the last worker made has Python in it."""
        self.until("() => window.workers.at(-1).ready")

    def until(self, condition: str) -> None:
        """Wait without the page's clock, which stands still. The test's own time limit ends it."""
        while not self.page.evaluate(condition):
            self.page.wait_for_timeout(20)

    def hide(self, hidden: bool = True) -> None:
        """Have the page believe that it is in a tab behind others."""
        self.page.evaluate(
            """(hidden) => Object.defineProperty(
                document, "hidden", { get: () => hidden, configurable: true })""",
            hidden,
        )

    def sleep(self, milliseconds: int) -> None:
        """Let the device sleep: all that came due meanwhile comes once, when it wakes."""
        self.page.clock.fast_forward(milliseconds)

    def pass_time(self, milliseconds: int) -> None:
        """Let the page's clock run on."""
        self.page.clock.run_for(milliseconds)


def open_in_hand(page: Page, server: Server, name: str) -> tuple[Sheet, Workers]:
    """Open a sheet whose worker and whose clock the test has in hand."""
    page.add_init_script(HANDLED)
    page.clock.install()
    sheet = open_sheet(page, server, name)
    page.clock.pause_at(datetime.now() + timedelta(hours=1))
    return sheet, Workers(page)
