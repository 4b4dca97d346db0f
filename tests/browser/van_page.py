"""The page of a van as its reader meets it: begun, written into, and what is kept of it."""

from urllib.parse import urljoin

from playwright.sync_api import Page, expect

from calc.van.files import read_van
from tests.browser.sheet_helpers import FORGET, STARTING, move

NAMED = "Fern <b>& co"


def empty(page: Page, address: str) -> None:
    """Open the page with no van on the device; where a page of the site is open, Python goes on."""
    is_open = page.url.startswith(urljoin(address, "/")) and page.locator("article").count()
    if is_open:
        move(page, urljoin(address, "/licences/"))
        page.wait_for_timeout(500)  # what was typed last is kept a moment later
    else:
        page.goto(urljoin(address, "/assets/lugwise.css"))
    page.evaluate(
        """async () => {
            const names = ["vans", "photos", "notes"];
            const open = indexedDB.open("lugwise-van", 1);
            const base = await new Promise((resolve) => {
                open.onsuccess = () => resolve(open.result);
                open.onupgradeneeded = () => { open.transaction.abort(); resolve(null); };
            });
            if (!base) return;
            const clear = base.transaction(names, "readwrite");
            for (const name of names) clear.objectStore(name).clear();
            await new Promise((resolve) => (clear.oncomplete = resolve));
            base.close();
        }"""
    )
    if is_open:
        page.evaluate(FORGET)
        move(page, address)
    else:
        page.goto(address)
    expect(page.locator("[data-start]")).to_be_visible(timeout=STARTING)


def begin(page: Page, name: str = NAMED) -> None:
    page.get_by_role("button", name="Plan a van").first.click()
    expect(box(page, "van.name")).to_be_focused(timeout=STARTING)
    page.keyboard.type(name)


def box(page: Page, place: str):
    return page.locator(f"[data-place='{place}'] :is(input, select)").first


def unfold_circuit(page: Page) -> None:
    """Unfold the first circuit, in a page that may still be at drawing its parts anew.

    A press on what is taken out at that moment is lost, so it is made again as a person would.
    """
    summaries = ("[data-group=circuits]", "[data-part='circuits[1]']")
    length = box(page, "circuits[1].length")
    page.locator(f"{summaries[0]} > summary").wait_for(timeout=STARTING)

    def unfolded() -> bool:
        for fold in summaries:
            if page.locator(fold).get_attribute("open") is None:
                page.locator(f"{fold} > summary").click()
        page.wait_for_timeout(500)
        return length.is_visible()

    assert any(unfolded() for _ in range(20))


def add(page: Page, load: str, length: str) -> None:
    """Add a circuit as one does with a thumb: the load, then the length, where the focus is."""
    group = page.locator("[data-group=circuits]")
    if group.get_attribute("open") is None:
        group.locator("> summary").click()
    number = page.locator("[data-list-of=circuits] > details").count() + 1
    page.get_by_role("button", name="Add a circuit").click()
    page.get_by_role("button", name=load, exact=True).click()
    expect(box(page, f"circuits[{number}].length")).to_be_focused()
    page.keyboard.type(length)


def kept(page: Page) -> list[dict]:
    """What the browser keeps, the newest first."""
    return page.evaluate(
        """async () => (await import("../assets/van_store.js")).list()""",
    )


def expect_kept(page: Page) -> None:
    expect(page.locator("[data-kept-words]")).to_have_text("Kept on this device")


def expect_lengths(page: Page, lengths: list[str]) -> None:
    """Wait until the browser keeps a van with these lengths, the newest of its vans."""

    def told() -> list[str]:
        vans = kept(page)
        parts = read_van(vans[0]["text"]).all("circuits") if vans else ()
        return [part.text("length") for part in parts]

    for _ in range(100):
        if told() == lengths:
            return
        page.wait_for_timeout(100)
    assert told() == lengths
