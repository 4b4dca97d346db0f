"""What axe, a checker of accessibility, and the sizes of things say of a page that stands open."""

from collections.abc import Iterable
from typing import Any

from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Page

from tests.counts import SOAK

SCHEMES = {"light": "default", "dark": "slate"}  # by the theme's own names

TAGS = [f"wcag{version}{level}" for version in (2, 21, 22) for level in ("a", "aa", "aaa")]
CONTRAST = "color-contrast-enhanced"  # what has 7 to 1 has the 4.5 to 1 of the other rule too
ALL_BUT_CONTRAST = {
    "runOnly": {"type": "tag", "values": TAGS},
    "rules": {
        CONTRAST: {"enabled": False},
        "color-contrast": {"enabled": False},
        "target-size": {"enabled": True},  # off unless asked for by name
    },
    "resultTypes": ["violations"],
}
CONTRAST_ALONE = {
    "runOnly": {"type": "rule", "values": [CONTRAST]},
    "resultTypes": ["violations"],
}

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
    // What is typed is no text node. Below 16 px a phone zooms in on the box.
    const boxes = ".lw-sheet :is(input, select), .lw-search input";
    for (const box of document.querySelectorAll(boxes)) {
        const size = parseFloat(getComputedStyle(box).fontSize);
        if (size < 15.99) found[box.name] = size;
    }
    return Object.entries(found).map(([what, size]) => `${size} px: ${what}`);
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

# A table wider than its box, unless the box fades at its edge and the first column stays in sight.
CUT_OFF = """() => [...document.querySelectorAll("[data-sheet] table, .lw-wall table")]
    .filter((table) => table.checkVisibility())
    .filter((table) => {
        const box = table.closest(".lw-scroll") ?? table.parentElement;
        if (box.scrollWidth <= box.clientWidth + 1) return false;
        const first = getComputedStyle(table.querySelector("tbody [scope=row]") ?? table);
        const fades = getComputedStyle(box).backgroundImage.includes("gradient");
        return !(fades && first.position === "sticky");
    })
    .map((table) => `cut off: ${table.outerHTML.slice(0, 90)}`)"""

# Words in a picture as they are seen: as the page's text, smaller than its heading; and its
# height, of which a page may have less than half a screen. None sticks out of its card.
IN_PICTURES = """() => [...document.querySelectorAll(":is([data-sheet], .lw-example) .lw-drawing")]
    .filter((picture) => picture.checkVisibility())
    .flatMap((picture) => {
        const scale = picture.getBoundingClientRect().width / picture.viewBox.baseVal.width;
        const heading = parseFloat(getComputedStyle(document.querySelector("article h1")).fontSize);
        const sizes = [...picture.querySelectorAll("text")]
            .map((words) => scale * parseFloat(getComputedStyle(words).fontSize));
        const said = picture.ariaLabel.slice(0, 40);
        const tall = picture.getBoundingClientRect().height;
        const most = innerHeight > innerWidth ? 0.45 * innerHeight : innerHeight;
        const place = picture.getBoundingClientRect();
        const card = picture.closest(".lw-answer, .lw-key").getBoundingClientRect();
        const isOut = place.left < card.left - 0.5 || place.right > card.right + 0.5;
        return [
            ...sizes.filter((size) => size < 14.9 || size > 0.8 * heading)
                .map((size) => `words of ${size.toFixed(1)} px: ${said}`),
            ...(isOut ? [`sticks out of its card: ${said}`] : []),
            ...(tall > most ? [`${tall} px high: ${said}`] : []),
        ];
    })"""

# The theme asks once, as a page opens, and paints all from this. Colours on their way from one
# scheme to the other are those of neither.
PAINT = """(scheme) => {
    document.body.dataset.mdColorScheme = scheme;
    document.getAnimations()
        .filter((one) => one instanceof CSSTransition)
        .forEach((one) => one.finish());
}"""

# Marks one text of each look, in whatever scheme the page is painted. Contrast depends on a text's
# own colour and size and on what is painted behind it, and on nothing else.
MARK_EACH_LOOK = """() => {
    const behind = new Map();
    const painted = (element) => {
        if (!element) return "";
        if (!behind.has(element)) {
            const own = getComputedStyle(element);
            const { backgroundColor, backgroundImage, opacity, filter } = own;
            const layer = [backgroundColor, backgroundImage, opacity, filter].join();
            const nothing = layer === "rgba(0, 0, 0, 0),none,1,none";
            behind.set(element, painted(element.parentElement) + (nothing ? "" : `/${layer}`));
        }
        return behind.get(element);
    };
    const looks = new Set();
    for (const element of document.body.querySelectorAll("*")) {
        const texts = [...element.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE);
        const box = element.matches("input, select, textarea, button");
        if (!box && !texts.some((node) => node.textContent.trim())) continue;
        if (!element.checkVisibility({ checkOpacity: true })) continue;
        const own = getComputedStyle(element);
        const parts = [own.color, own.fill, own.fontSize, own.fontWeight, own.textShadow, box];
        const look = [...parts, painted(element)].join();
        if (!looks.has(look)) element.dataset.look = "";
        looks.add(look);
    }
    return looks.size;
}"""

# One renderer makes all of a kind, and axe takes seconds to look at each again: a few of each kind
# stay, and whatever has a look of its own. The count begins anew at a heading.
PRUNE = """(kept) => {
    const own = new Set();  // what has a look of its own, and all it stands in
    for (let look of document.querySelectorAll("[data-look]")) {
        for (; look; look = look.parentElement) own.add(look);
    }
    for (const [places, most] of Object.entries(kept)) {
        const found = [...document.querySelectorAll(places)];
        for (const parent of new Set(found.map((place) => place.parentElement))) {
            let before = 0;
            for (const child of [...parent.children]) {
                if (/^H[1-6]$/.test(child.tagName)) before = 0;
                else if (child.matches(places) && ++before > most) own.has(child) || child.remove();
            }
        }
    }
}"""
KEPT = {
    ".lw-example": 1, ".lw-practice > li": 1, ".lw-menu ul": 2,
    "article details": 2, "article tbody > tr": 2, "article :is(ul, ol) > li": 2,
    "article dl > *": 2, "article option": 2, "article p": 3,
}  # fmt: skip


def unfold_everything(page: Page) -> None:
    page.evaluate(
        "() => document.querySelectorAll('details').forEach((fold) => (fold.open = true))"
    )


def paint(page: Page, scheme: str) -> None:
    page.emulate_media(color_scheme=scheme)
    page.evaluate(PAINT, SCHEMES[scheme])


def mark_each_look(page: Page, schemes: Iterable[str] = SCHEMES) -> None:
    """Mark the texts whose contrast is looked at: one of each look in each of the schemes."""
    for scheme in schemes:
        paint(page, scheme)
        least = 2 if page.url.endswith("404.html") else 5  # a sentence and its links
        assert page.evaluate(MARK_EACH_LOOK) > least, "texts have more looks than that"


def keep_one_of_each(page: Page, schemes: Iterable[str] = SCHEMES) -> None:
    """Leave a few of what is made alike, and a text of each look; but all in a long night."""
    if not SOAK:
        mark_each_look(page, schemes)
        page.evaluate(PRUNE, KEPT)


def broken_rules(page: Page, schemes: Iterable[str] = SCHEMES) -> list[str]:
    """Return what breaks axe's WCAG rules, and has too little contrast in one of the schemes."""
    found = violations(page, ALL_BUT_CONTRAST)
    if not SOAK and not page.locator("[data-look]").count():
        mark_each_look(page, schemes)
    for scheme in schemes:
        paint(page, scheme)
        places = None if SOAK else "[data-look]"
        found += [f"{scheme}: {line}" for line in violations(page, CONTRAST_ALONE, places)]
    return found


def violations(page: Page, options: dict[str, Any], places: str | None = None) -> list[str]:
    """Return what breaks axe's rules in the places named, or anywhere."""
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(AXE_SCRIPT)
    page.evaluate("() => scrollTo(0, 0)")  # what the header covers farther down is no small target
    ask = "async ([places, options]) => (await axe.run(places ?? document, options)).violations"
    found = {
        f"{rule['id']}: {node['html'][:160]} ({node['failureSummary']})"
        for rule in page.evaluate(ask, [places, options])
        for node in rule["nodes"]
        if not any(rule["id"] == name and part in node["html"] for name, part in THEMES_OWN)
    }
    return sorted(found)
