"""Where the time of a start goes: what page and worker noted on the way to the live answer."""

from collections.abc import Iterator

from playwright.sync_api import Page

from build_scripts.bench_table import Stage, ms

IN_PAGE = """() => {
  const [document] = performance.getEntriesByType("navigation");
  const [painted] = performance.getEntriesByName("first-contentful-paint");
  return {
    origin: performance.timeOrigin,
    marks: [
      ["the page's first byte is here", document.responseStart],
      ["the worker is made", window.benchMade],
      ["the first words are painted", painted?.startTime],
      ["the page is read", document.domInteractive],
      ["the first live answer is shown", window.benchReady],
    ],
  };
}"""

IN_WORKER = """() => ({
  origin: performance.timeOrigin,
  marks: performance.getEntriesByType("mark").map(({ name, startTime }) => [name, startTime]),
})"""

NAMES = {
    "worker runs": "the worker runs",
    "memory inflated": "the saved memory is unpacked",
    "wasm compiled": "Python's program is compiled",
    "wasm instantiated": "it is instantiated",
    "Python runs": "Python runs",
    "calc answers": "it gives its first answer",
}
"""What the worker notes, in words."""


def marks(page: Page) -> dict[str, float]:
    """Milliseconds from the navigation to each stage of a page that has its first live answer."""
    found = page.evaluate(IN_PAGE)
    told = {name: at for name, at in found["marks"] if at is not None}
    for worker in page.workers:
        inside = worker.evaluate(IN_WORKER)
        later = inside["origin"] - found["origin"]
        told |= {NAMES[name]: at + later for name, at in inside["marks"] if name in NAMES}
    return told


def stages(memory: list[dict[str, float]], files: list[dict[str, float]]) -> Iterator[Stage]:
    """Yield the stages of both ways to start, in the order in which they come."""

    def told(of: list[dict[str, float]], name: str) -> str:
        times = [one[name] for one in of if name in one]
        return ms(times) if times else ""

    last = {name: at for one in (*files, *memory) for name, at in one.items()}
    for name in sorted(last, key=last.__getitem__):
        yield Stage(name, told(memory, name), told(files, name))
