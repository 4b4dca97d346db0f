"""How soon the first live answer stands in engines other than Chromium.

WebKit, as it is driven here, keeps nothing when it ends, so each start is a new page in the same
process. Times run from the navigation, by the page's own clock, asked every few milliseconds.
"""

import tempfile
from collections.abc import Iterator
from pathlib import Path

from build_scripts.bench_measures import PATH, SITE, served
from build_scripts.bench_table import Row, ms
from build_scripts.engine import Engine, EngineError
from build_scripts.engine_firefox import Firefox
from build_scripts.engine_webkit import WebKit

ENGINES: tuple[type[Engine], ...] = (Firefox, WebKit)

READY = """async () => {
    const { dataset } = document.documentElement;
    while (dataset.lugwise !== "ready") await new Promise((go) => setTimeout(go, 5));
    return [dataset.python, performance.now()];
}"""

SAVED = "async () => !!(await navigator.serviceWorker.getRegistration())?.active"


def engine_rows(runs: int) -> Iterator[Row]:
    """Yield a row for each engine; what this machine lacks or cannot do is told as such."""
    for engine in ENGINES:
        try:
            found = ms(first_answers(engine, runs)) if engine.is_here() else "not on this machine"
        except EngineError:
            found = "not measured"
        yield Row(f"first live answer in {engine.name}, saved", found)


def first_answers(engine: type[Engine], runs: int) -> list[float]:
    """Milliseconds to the first live answer of a saved site whose server has been ended.

    Raises EngineError if none comes, or Python started in another way than from the saved memory.
    """
    times = []
    with tempfile.TemporaryDirectory() as home, engine(Path(home), engine.full_speed) as opened:
        with served(SITE) as address:
            opened.open(address + PATH)
            opened.wait_for(SAVED)
        for _ in range(runs):
            opened.open(f"{address}licences/")
            opened.open(address + PATH)
            rung, found = opened.run(READY)
            if rung != "memory":
                raise EngineError(f"{engine.name} did not start from the saved memory")
            times.append(found)
    return times
