"""For every hand and eye: axe's WCAG rules, sizes of targets and text, narrow windows, focus."""

from itertools import pairwise

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

import calc
from tests.browser.sheet_helpers import ATTACK, ONE_OF_EACH, Sheet, link_to, open_sheet, usual
from tests.browser.tools import NO_PYTHON, VIEWPORTS

CHECKS = [f"checks/{name}/" for name in calc.worksheets()]
OTHERS = [
    *("", "wall-tables/", "how-we-check/", "units-links-privacy/", "without-signal/", "licences/"),
    "404.html",
]

WCAG = {
    "runOnly": {
        "type": "tag",
        "values": [
            f"wcag{version}{level}" for version in (2, 21, 22) for level in ("a", "aa", "aaa")
        ],
    },
    "rules": {
        # Off unless asked for by name. What has 7 to 1 has the 4.5 to 1 of the other rule too.
        "color-contrast-enhanced": {"enabled": True},
        "color-contrast": {"enabled": False},
        "target-size": {"enabled": True},
    },
    "resultTypes": ["violations"],
}

SCHEMES = {"light": "default", "dark": "slate"}  # by the theme's own names

THEMES_OWN: dict[tuple[str, str], str] = {}
"""Rule and part of the element that breaks it: why it is the theme's own and bears no harm."""

# Text nodes a reader sees, in or below the elements named, with the element that styles each.
SMALL_TEXT = """(places) => {
    const found = {};
    for (const place of document.querySelectorAll(places)) {
        const walker = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
        while (walker.nextNode()) {
            const element = walker.currentNode.parentElement;
            if (!walker.currentNode.textContent.trim()) continue;
            if (element.closest("svg, sub, sup, script")) continue;
            if (!element.checkVisibility({ checkOpacity: true })) continue;
            const size = parseFloat(getComputedStyle(element).fontSize);
            if (size < 15.99) found[`${element.tagName} ${element.className}`] = size;
        }
    }
    return found;
}"""

SMALL_TARGETS = """(targets) => [...document.querySelectorAll(targets)]
    .filter((target) => target.checkVisibility({ checkOpacity: true }))
    .map((target) => [target.outerHTML.slice(0, 90), target.getBoundingClientRect()])
    .filter(([, box]) => box.width && (box.width < 43.9 || box.height < 43.9))
    .map(([html, box]) => `${Math.round(box.width)} x ${Math.round(box.height)}: ${html}`)"""

# What sticks out to the right, unless a box around it scrolls by itself.
STICKING_OUT = """(places) => {
    const root = document.scrollingElement;
    const out = [...document.querySelectorAll(places)]
        .filter((element) => element.checkVisibility())
        .filter((element) => !element.closest(".lw-scroll, .lw-unseen"))
        .filter((element) => element.getBoundingClientRect().right > root.clientWidth + 1)
        .map((element) => element.outerHTML.slice(0, 90));
    if (root.scrollWidth > root.clientWidth) out.unshift(`the page is ${root.scrollWidth} px wide`);
    return out;
}"""


# One renderer makes all of a kind, and axe looks at each again: minutes a page, folds open.
ONE_OF_EACH_KIND = """(kept) => {
    for (const [places, most] of Object.entries(kept)) {
        const parents = new Map();
        for (const place of document.querySelectorAll(places)) {
            const before = parents.get(place.parentElement) ?? 0;
            parents.set(place.parentElement, before + 1);
            if (before >= most) place.remove();
        }
    }
}"""
KEPT = {
    ".lw-example": 1, ".lw-practice > li": 1, "article tbody > tr": 4, ".lw-working > li": 4,
    "article section > details": 2, ".md-nav__list > .md-nav__item": 2, "article > p": 4,
}  # fmt: skip


@pytest.fixture
def viewport():
    """A phone's, unless a test asks for both."""
    return VIEWPORTS["phone"]


@pytest.fixture
def still(page) -> Page:
    """A page on which Python never starts: what stands there is what was built."""
    page.add_init_script(NO_PYTHON)
    return page


both_viewports = pytest.mark.parametrize("viewport", VIEWPORTS.values(), ids=VIEWPORTS)


def unfold_everything(page: Page) -> None:
    page.evaluate(
        "() => document.querySelectorAll('details').forEach((fold) => (fold.open = true))"
    )


def busy_sheet(page: Page, server, name: str) -> Sheet:
    """A sheet that shows all it can: a link's notes, a sentence at each box, every fold open."""
    fields = [field.id for field in calc.find(name).fields]
    wrong = "&".join(f"{field}={ATTACK}" for field in fields[1:])
    sheet = open_sheet(page, server, name, f"#v=0&{wrong}&{'unknown' * 6}=1")
    expect(sheet.notes).to_be_visible()
    unfold_everything(page)
    return sheet


def broken_rules(page: Page) -> list[str]:
    page.evaluate(ONE_OF_EACH_KIND, KEPT)
    violations = Axe().run(page, options=WCAG).response["violations"]
    found = {
        f"{page.url}: {rule['id']}: {node['html'][:160]} ({node['failureSummary']})"
        for rule in violations
        for node in rule["nodes"]
        if not any(rule["id"] == name and part in node["html"] for name, part in THEMES_OWN)
    }
    return sorted(found)


@pytest.mark.parametrize(
    ("viewport", "scheme"),
    [(VIEWPORTS["phone"], "light"), (VIEWPORTS["desktop"], "dark")],
    ids=["light-phone", "dark-desktop"],  # colours hang on the scheme, places on the window
)
@pytest.mark.parametrize("paths", [CHECKS, OTHERS], ids=["checks", "others"])
def test_no_page_breaks_a_wcag_rule(still, server, scheme, paths):
    page = still
    page.emulate_media(color_scheme=scheme)
    broken = []
    for path in paths:
        page.goto(server.url + path)
        expect(page.locator("body")).to_have_attribute("data-md-color-scheme", SCHEMES[scheme])
        unfold_everything(page)
        broken += broken_rules(page)
    assert not broken, "\n".join(broken)


@pytest.mark.parametrize("scheme", SCHEMES)
def test_no_sheet_breaks_a_wcag_rule_while_figures_are_wrong(page, server, scheme):
    page.emulate_media(color_scheme=scheme)
    broken = []
    for name in ONE_OF_EACH:
        busy_sheet(page, server, name)
        expect(page.locator("body")).to_have_attribute("data-md-color-scheme", SCHEMES[scheme])
        broken += broken_rules(page)
    assert not broken, "\n".join(broken)


@both_viewports
def test_every_target_takes_a_finger_and_every_text_has_16_pixels(still, server):
    page = still
    ours = (
        "article summary, .lw-sheet :is(input, select, button), .lw-questions a, .lw-offline button"
    )
    themes = ".md-header :is(label, button, a, input):not(.md-search__overlay), .md-nav__link"
    targets, texts = set(), {}
    for path in (*CHECKS, *OTHERS):
        page.goto(server.url + path)
        targets |= set(page.evaluate(SMALL_TARGETS, f"{ours}, {themes}"))
        unfold_everything(page)
        texts |= page.evaluate(SMALL_TEXT, "article, .lw-offline, .md-header, .md-sidebar")
        # What is typed is no text node. Below 16 px a phone zooms in on the box.
        texts |= page.locator(".lw-sheet :is(input, select), .md-search__input").evaluate_all(
            """(boxes) => Object.fromEntries(boxes
                .map((box) => [box.name, parseFloat(getComputedStyle(box).fontSize)])
                .filter(([, size]) => size < 15.99))"""
        )
    assert not targets, "\n".join(sorted(targets))
    assert not texts


def test_nothing_scrolls_sideways(still, server):
    page = still
    out = {}
    for path in (*CHECKS, *OTHERS):
        page.goto(server.url + path)
        unfold_everything(page)
        for width in (320, 360):
            page.set_viewport_size({"width": width, "height": 640})
            sticking = page.evaluate(STICKING_OUT, "body *:not(.md-sidebar, .md-sidebar *)")
            out[f"{path} at {width} px"] = sticking
    assert not any(out.values()), out


def test_no_busy_sheet_scrolls_sideways(page, server):
    out = {}
    for name in ONE_OF_EACH:
        busy_sheet(page, server, name)
        for width in (320, 360):
            page.set_viewport_size({"width": width, "height": 640})
            out[f"{name} at {width} px"] = page.evaluate(STICKING_OUT, "article *")
    assert not any(out.values()), out


def test_text_at_twice_its_size_fits_a_narrow_phone(still, server):
    page = still
    page.set_viewport_size({"width": 320, "height": 640})
    found = {}
    for path in (*CHECKS, ""):
        page.goto(server.url + path)
        unfold_everything(page)
        page.evaluate(
            "() => { document.documentElement.style.fontSize = '250%'; }"
        )  # the theme has 125 %
        out = page.evaluate(STICKING_OUT, "article *")
        # The theme's own bar of buttons is wider than so narrow a window; ours is what is below it.
        found[path] = [element for element in out if not element.startswith("the page is")]
    assert not any(found.values()), found


@both_viewports
def test_what_has_the_focus_is_seen_and_comes_in_reading_order(page, server):
    sheet = open_sheet(page, server, "wire-drop", link_to("wire-drop", usual("wire-drop")))
    sheet.unfold()
    sheet.box("current").focus()
    places = []
    for key in ["Tab"] * 24 + ["Shift+Tab"] * 24:
        page.keyboard.press(key)
        seen = page.evaluate(
            """() => {
                const element = document.activeElement;
                const box = element.getBoundingClientRect();
                const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
                const top = document.elementFromPoint(x, y);
                const style = getComputedStyle(element);
                return {
                    html: element.outerHTML.slice(0, 90),
                    place: box.y + scrollY,
                    inside: !!element.closest("[data-sheet]"),
                    hidden: !(top && (element.contains(top) || top.contains(element))),
                    outline: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
                };
            }"""
        )
        if not seen["inside"]:
            continue
        assert not seen["hidden"], f"covered after {key}: {seen['html']}"
        assert seen["outline"], f"no outline: {seen['html']}"
        if key == "Tab":
            places.append(seen["place"])
    assert len(places) >= 15
    assert all(a < b + 60 for a, b in pairwise(places)), places
