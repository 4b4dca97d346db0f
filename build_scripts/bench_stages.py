"""How soon a sum that takes longer than a keystroke gives its first stage, and all of it."""

from playwright.sync_api import BrowserType

from build_scripts.bench_measures import BROWSER, SITE, first_answer, served, wait_for

SHEET, FIELD = "week-ahead", "array"
KEYSTROKES = 20

STAGE_CLOCK = """() => {
  const answer = document.querySelector("[data-answer]");
  let from = null;
  window.benchStages = [];
  document.addEventListener("input", (event) => (from = event.timeStamp), true);
  new MutationObserver(() => {
    const whole = !answer.querySelector("progress");
    window.benchStages.push([performance.now() - from, whole]);
  }).observe(answer, { attributes: true, attributeFilter: ["data-seq"] });
}"""


def stage_times(chromium: BrowserType) -> tuple[list[float], list[float]]:
    """Milliseconds from a key to the first stage in the page, and to the whole answer."""
    with served(SITE) as address:
        opened = chromium.launch(**BROWSER)
        context = opened.new_context(service_workers="block")
        page, _ = first_answer(context, f"{address}checks/{SHEET}/")
        wait_for(page, "!document.querySelector('[data-rest]')")
        page.evaluate(STAGE_CLOCK)
        page.click(f"#{SHEET}-{FIELD}")
        page.keyboard.press("End")
        for number in range(KEYSTROKES):
            page.keyboard.press("Backspace" if number % 2 else "5")
            wait_for(page, f"window.benchStages.filter(([, all]) => all).length > {number}", 30)
        stages = page.evaluate("window.benchStages")
        opened.close()
    return [ms for ms, whole in stages if not whole], [ms for ms, whole in stages if whole]
