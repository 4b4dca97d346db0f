"""How soon the review and the diagram of a whole van follow an edit, in the page."""

from playwright.sync_api import BrowserType

from build_scripts.bench_measures import BROWSER, SITE, served

CIRCUITS = 40
EDITS = 20

# The page's own way to Python, without what it then draws. The van is a sample van of ours whose
# circuits are copied until there are enough.
EDIT_CLOCK = """async ([circuits, edits]) => {
  const python = await import("../assets/python.js");
  let count = 0;
  const ask = (van) => new Promise((take, stop) => {
    const refuse = (...why) => stop(new Error(why.join(" ")));
    python.ask(`bench-${++count}`, { van }, { needs: "van", take, refuse });
  });
  let { text } = await ask({ do: "demo", name: "marram" });
  const held = () => JSON.parse(text).circuits.length;
  for (let place = 1; held() < circuits; place += 1) {
    ({ text } = await ask({ do: "copy", place: `circuits[${place}]`, text }));
  }
  await ask({ do: "review", text });
  await ask({ do: "diagram", text });
  const times = [];
  for (let edit = 0; edit < edits; edit += 1) {
    const from = performance.now();
    const typed = `${(2 + edit / 10).toFixed(1)} m`;
    const changes = { [`circuits[${1 + edit}].length`]: { typed } };
    ({ text } = await ask({ do: "change", changes, text }));
    await ask({ do: "review", text });
    await ask({ do: "diagram", text });
    times.push(performance.now() - from);
  }
  return [held(), times];
}"""


def edit_times(chromium: BrowserType) -> list[float]:
    """Milliseconds from an edit of one circuit of a van to its review and its diagram.

    Raises ValueError if the van has other than CIRCUITS circuits.
    """
    with served(SITE) as address:
        opened = chromium.launch(**BROWSER)
        page = opened.new_context(service_workers="block").new_page()
        page.goto(f"{address}van/")
        held, times = page.evaluate(EDIT_CLOCK, [CIRCUITS, EDITS])
        opened.close()
    if held != CIRCUITS:
        raise ValueError(f"The van has {held} circuits")
    return times
