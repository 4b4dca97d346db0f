"""The page of a van as it is built: what its scripts fill in, and what is read without them."""

from calc.render.html import Markup, el
from calc.van.demos import DEMOS

TABS = (("parts", "Parts"), ("review", "Review"), ("diagram", "Diagram"), ("lists", "Lists"))
WITHOUT_SCRIPTS = (
    "Filling in a van takes JavaScript, which is off here. The guides to planning and inspecting"
    " have three vans reviewed, drawn and listed, and every worksheet has its example."
)


def page_html() -> Markup:
    """Return the live part of the page: nothing of it is of any one van."""
    return el(
        "section",
        el("link", rel="stylesheet", href="../assets/van.css"),
        el("noscript", el("p", WITHOUT_SCRIPTS, class_="lw-state")),
        _start(),
        el("p", "", role="status", data_said=True, class_="lv-said", hidden=True),
        el("ul", "", data_problems=True, class_="lw-notes", hidden=True),
        el(
            "div",
            _head(),
            _refused(),
            el("div", "", data_verdict=True, class_="lv-verdict", aria_live="polite"),
            _tabs(),
            *(_panel(name, first=name == "parts") for name, _ in TABS),
            _files(),
            data_live=True,
            hidden=True,
        ),
        data_van=True,
        data_open="parts",
        class_="lw-sheet lv",
        aria_label="The van",
        data_search_exclude=True,
    )


def _button(words: str, plain: bool = True, **attributes: object) -> Markup:
    kind = "lw-button lw-plain" if plain else "lw-button"
    return el("button", words, type="button", class_=kind, **attributes)


def _small(words: str, **attributes: object) -> Markup:
    return el("button", words, type="button", class_="lv-small", **attributes)


def _begin() -> list[Markup]:
    return [
        _button("Plan a van", plain=False, data_new_van=""),
        _button("Inspect a van", data_new_van="inspection"),
        _file("Open a file", ".toml,.json,text/plain,application/json"),
    ]


def _file(words: str, accept: str) -> Markup:
    """Return a box to choose a file, in the form of a button."""
    box = el("input", type="file", accept=accept, data_file=True, class_="lw-unseen")
    return el("label", words, box, class_="lw-button lw-plain")


def _demos() -> Markup:
    return el(
        "p",
        "Or look at a sample:",
        *(
            el("button", about, type="button", class_="lv-small", data_demo=id)
            for id, about in DEMOS.items()
        ),
        class_="lv-tools",
    )


def _start() -> Markup:
    return el(
        "div",
        el("p", *_begin(), class_="lv-tools"),
        _demos(),
        data_start=True,
        hidden=True,
    )


def _head() -> Markup:
    return el(
        "div",
        el("label", "Van", for_="lv-which", class_="lw-unseen"),
        el("select", id="lv-which", data_which=True),
        _small("Undo", data_undo=True, disabled=True),
        _small("Redo", data_redo=True, disabled=True),
        el("span", "", data_kept_words=True, class_="lv-kept"),
        _small("Keep it", data_stores=True, hidden=True),
        class_="lv-head",
    )


def _refused() -> Markup:
    return el(
        "div",
        el("p", "", data_refused_words=True),
        _button("Save the file", plain=False, data_writes="toml"),
        data_refused=True,
        class_="lw-state",
        hidden=True,
    )


def _tabs() -> Markup:
    return el(
        "div",
        *(
            el(
                "button",
                words,
                type="button",
                role="tab",
                id=f"lv-tab-{name}",
                aria_controls=f"lv-panel-{name}",
                aria_selected=str(name == "parts").lower(),
                tabindex="0" if name == "parts" else "-1",
                data_tab=name,
            )
            for name, words in TABS
        ),
        role="tablist",
        aria_label="Views of the van",
        class_="lv-tabs",
    )


def _panel(name: str, *, first: bool) -> Markup:
    return el(
        "div",
        "",
        id=f"lv-panel-{name}",
        role="tabpanel",
        aria_labelledby=f"lv-tab-{name}",
        tabindex="-1",
        class_=f"lv-panel lv-{name}",
        hidden=not first,
        **{f"data_panel_{name}": True},
    )


def _files() -> Markup:
    return el(
        "details",
        el("summary", "Files, link, other vans"),
        el("h3", "Save and send"),
        el(
            "p",
            _button("Save as a file", data_writes="toml"),
            _button("Save as JSON", data_writes="json"),
            _button("Make a link", data_makes_link=True),
            class_="lv-tools",
        ),
        _link(),
        el("h3", "Begin or open"),
        el("p", *_begin(), class_="lv-tools"),
        _demos(),
        el("h3", "Circuits from a spreadsheet"),
        el(
            "p",
            _button("Save the template", data_writes_template=True),
            _file("Add circuits from CSV", ".csv,.tsv,text/csv"),
            class_="lv-tools",
        ),
        el("h3", "What is kept where"),
        el(
            "p",
            "Every van is kept in this browser on this device, and nowhere else, after each change."
            " Nothing is sent. Clearing the browser’s data removes it: save a file to be sure. A"
            " link holds the whole van behind its “#”, which no server is sent; photos are in no"
            " file and in no link.",
        ),
        el(
            "p",
            _button("Remove this van", data_removes_van=True),
            el(
                "span",
                "It is removed with its photos. This cannot be undone. ",
                _button("Remove permanently", data_removes_really=True),
                data_really=True,
                hidden=True,
            ),
            class_="lv-tools",
        ),
        class_="lv-files",
    )


def _link() -> Markup:
    return el(
        "div",
        el("p", "", data_link_said=True, role="status"),
        el("label", "Link to this van", for_="lv-link", class_="lw-unseen"),
        el("input", id="lv-link", type="text", readonly=True, data_link_box=True, class_="lw-link"),
        el(
            "p",
            _button("Copy link", data_link_copy=True),
            _button("Send", data_link_send=True, hidden=True),
            class_="lv-tools",
        ),
        el("div", "", data_code=True, class_="lw-qr lv-code"),
        data_link_place=True,
        hidden=True,
    )
