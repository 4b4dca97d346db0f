"""The printed sheet: figures, answer, whole working, cautions, link, square code and date."""

import re
import unicodedata
import zlib
from datetime import date

import pytest
import segno
from playwright.sync_api import Page, expect

import calc
from calc.render import sheet_html
from calc.render.code import code_svg
from tests.browser.sheet_helpers import EVERY_FIELD, ONE_OF_EACH, Sheet, link_to, open_sheet
from tests.browser.tools import VIEWPORTS

ONE_OF_EACH_DRAWING = (
    "wire-drop",
    "joint-torque",
    "wire-size",
    "fuse-ladder",
    "enclosure-airflow",
    "sun-yield",
)

NOT_A_SUBSTITUTE = (
    "Not a substitute for the maker’s instructions, local rules or a qualified person."
)


@pytest.fixture
def viewport():
    """A phone's: paper has its own width."""
    return VIEWPORTS["phone"]


@pytest.fixture
def printing(visit: Page) -> Page:
    """A page whose print command only counts how often it was given."""
    visit.evaluate("() => { delete document.documentElement.dataset.printing; }")
    visit.add_init_script(
        """window.print = () => {
            const { dataset } = document.documentElement;
            dataset.prints = Number(dataset.prints ?? 0) + 1;
        };"""
    )
    return visit


def text_of_pdf(data: bytes) -> str:
    """Return the text of a PDF as Chromium writes it, without any spaces.

    Text stands in the pages as glyph numbers, and each font says which characters those are.
    """
    objects = dict(re.findall(rb"(?s)\n(\d+) 0 obj\n(.*?)\nendobj", data))
    streams = {
        number: zlib.decompress(body.partition(b"stream\n")[2])
        for number, body in objects.items()
        if b"/FlateDecode" in body and b"stream\n" in body and b"/Subtype /Image" not in body
    }
    fonts = {}
    for number, body in objects.items():
        if found := re.search(rb"/ToUnicode (\d+) 0 R", body):
            fonts[number] = characters(streams[found[1]])
    text = []
    for stream in streams.values():
        glyphs = {}
        for font, codes in re.findall(rb"/F(\d+) \S+ Tf|<([0-9A-F]+)> Tj", stream):
            glyphs = fonts[font] if font else glyphs
            for place in range(0, len(codes), 4):
                text.append(glyphs.get(int(codes[place : place + 4], 16), "?"))
    return without_spaces("".join(text))


def characters(table: bytes) -> dict[int, str]:
    """Return a font's characters by glyph number, from its ToUnicode table."""
    found = {}
    for block in re.findall(rb"(?s)beginbfchar(.*?)endbfchar", table):
        for glyph, units in re.findall(rb"<(\w+)> <(\w+)>", block):
            found[int(glyph, 16)] = bytes.fromhex(units.decode()).decode("utf-16-be")
    for block in re.findall(rb"(?s)beginbfrange(.*?)endbfrange", table):
        for first, last, unit in re.findall(rb"<(\w+)> <(\w+)> <(\w+)>", block):
            for step in range(int(last, 16) - int(first, 16) + 1):
                found[int(first, 16) + step] = chr(int(unit, 16) + step)
    return found


def without_spaces(text: str) -> str:
    """Return `text` without spaces and ligatures, which differ between paper and source."""
    return re.sub(r"\s+", "", unicodedata.normalize("NFKC", text))


def press_print(sheet: Sheet, name: str = "Print") -> None:
    html = sheet.page.locator("html")
    before = int(html.get_attribute("data-prints") or 0)
    sheet.root.get_by_role("button", name=name, exact=True).click()
    expect(html).to_have_attribute("data-prints", str(before + 1))
    expect(sheet.part("qr").locator("svg")).to_be_attached()


def test_the_square_code_holds_the_link(printing, server):
    link = link_to("wire-drop", EVERY_FIELD["wire-drop"])
    sheet = open_sheet(printing, server, "wire-drop", link)
    press_print(sheet)
    address = f"{server.url}checks/wire-drop/{link}"
    made = segno.make(address, error="m", micro=False).svg_inline(border=4, omitsize=True)
    drawn = sheet.part("qr").locator("svg path[stroke], svg path:not([fill])")
    expect(drawn).to_have_attribute("d", re.search(r' d="([^"]+)"', made)[1])
    # Another figure, another code.
    sheet.type("current", "46")
    other = link_to("wire-drop", EVERY_FIELD["wire-drop"] | {"current": "46 A"})
    expect(sheet.part("link")).to_have_value(address.replace(link, other))
    press_print(sheet)
    expect(drawn).not_to_have_attribute("d", re.search(r' d="([^"]+)"', made)[1])


@pytest.mark.parametrize("name", (*ONE_OF_EACH, *ONE_OF_EACH_DRAWING))
def test_paper_holds_all_that_the_sheet_knows(printing, server, name):
    texts = EVERY_FIELD[name]
    sheet = open_sheet(printing, server, name, link_to(name, texts))
    sheet.expect_answer(texts)
    press_print(sheet, "Print in full")
    printing.evaluate("() => { document.documentElement.dataset.printing = 'full'; }")
    pdf = printing.pdf(format="A4")
    printed = text_of_pdf(pdf)
    answer = calc.work(name, texts)
    today = date.today()
    wanted = [
        answer.sentence,
        f"{server.url}checks/{name}/{link_to(name, texts)}",
        f"{today.day} {today:%B %Y}",
        NOT_A_SUBSTITUTE,
        *(caution.text for caution in answer.cautions),
        *(str(source) for source in answer.sources),
        *(part for line in answer.working for part in (line.value, line.text)),
    ]
    for field in (field for field in answer.worksheet.fields if not field.hidden):
        reading = answer.inputs[field.id]
        if not reading.applies:
            continue
        in_rows = [cell.entry or cell.text for row in reading.rows for cell in row[:2]]
        wanted += [field.label, *(in_rows or [reading.entry or reading.text])]
    missing = [words for words in wanted if without_spaces(words) not in printed]
    assert not missing
    for other in ("Copy link", "Back to the sheet", "What to do next", "Worked example"):
        assert without_spaces(other) not in printed


def pages_of(pdf: bytes) -> int:
    return len(re.findall(rb"/Type /Page\b", pdf))


PUT_IN = """([html, question, code]) => {
    document.querySelector("[data-sheet]").outerHTML = html;
    document.querySelector("h1").textContent = question;
    const sheet = document.querySelector("[data-sheet]");
    sheet.dataset.live = "";
    sheet.querySelector("[data-qr]").innerHTML = code;
    sheet.querySelector("[data-address]").textContent = "address ".repeat(100);
    delete document.documentElement.dataset.printing;
}"""


def test_every_sheet_has_its_answer_on_one_page(still, server):
    """By the browser's own print, on paper as narrow as A4 and as short as Letter, with every field
    filled in.
    """
    still.goto(f"{server.url}checks/runtime/")
    code = code_svg("address" * 60)
    longer = {}
    for name, texts in EVERY_FIELD.items():
        answer = calc.work(name, texts)
        question = answer.worksheet.question
        still.evaluate(PUT_IN, [str(sheet_html(answer)), question, code])
        pdf = still.pdf(width="210mm", height="279mm")
        if pages_of(pdf) != 1:
            longer[name] = pages_of(pdf)
    assert longer == {}


CUT_ON_PAPER = """() => {
    const parted = [...document.querySelectorAll(".lw-field > :is(label, .lw-label)")]
        .filter((label) => label.checkVisibility())
        .flatMap((label) => {
            const words = document.createRange();
            return [...label.textContent.matchAll(/[\\p{L}]+/gu)].filter(({ index, 0: { length } }) => {
                words.setStart(label.firstChild, index);
                words.setEnd(label.firstChild, index + length);
                return words.getClientRects().length > 1;
            });
        })
        .map(([word]) => `parted: ${word}`);
    const cut = [...document.querySelectorAll(".lw-field select")]
        .filter((list) => list.checkVisibility())
        .filter((list) => {
            const whole = list.cloneNode(true);
            whole.replaceChildren(list.selectedOptions[0].cloneNode(true));
            whole.style.cssText = "position: absolute; width: auto; max-width: none";
            list.after(whole);
            const room = list.offsetWidth - whole.offsetWidth;
            whole.remove();
            return room < 0;
        })
        .map((list) => `cut: ${list.selectedOptions[0].text}`);
    return [...parted, ...cut];
}"""  # noqa: E501


@pytest.mark.parametrize(
    "name", ["week-ahead", "alternator-charge", "shore-charge", "heater-night"]
)
def test_on_the_one_page_nothing_is_cut_and_the_picture_is_seen(still, server, name):
    still.goto(f"{server.url}checks/{name}/")
    still.set_viewport_size({"width": 680, "height": 960})  # A4 without its margins
    still.emulate_media(media="print")
    assert still.evaluate(CUT_ON_PAPER) == []
    expect(still.locator(".lw-sheet[data-sheet] .lw-drawing").first).to_be_visible()


@pytest.mark.parametrize("by_button", [True, False], ids=["button", "browser"])
def test_the_one_page_has_what_a_reader_needs(printing, server, by_button):
    texts = EVERY_FIELD["wire-drop"]
    sheet = open_sheet(printing, server, "wire-drop", link_to("wire-drop", texts))
    sheet.expect_answer(texts)
    press_print(sheet)
    if by_button:
        printing.evaluate("() => { document.documentElement.dataset.printing = 'summary'; }")
    pdf = printing.pdf(format="Letter")
    assert pages_of(pdf) == pages_of(printing.pdf(format="A4")) == 1
    printed = text_of_pdf(pdf)
    answer = calc.work("wire-drop", texts)
    today = date.today()
    wanted = [
        answer.worksheet.question,
        answer.sentence,
        answer.worksheet.valid,
        answer.shown["drop"],
        f"{server.url}checks/wire-drop/{link_to('wire-drop', texts)}",
        f"{today.day} {today:%B %Y}",
        NOT_A_SUBSTITUTE,
        *(caution.text for caution in answer.cautions),
        *(field.label for field in answer.worksheet.fields if answer.inputs[field.id].applies),
    ]
    assert not [words for words in wanted if without_spaces(words) not in printed]
    assert without_spaces(answer.working[0].text) not in printed


def test_the_guide_is_printed_by_its_own_button_and_where_there_is_no_sheet(printing, server):
    """With the folded rest of its story, which the sheet's paper leaves out."""
    sheet = open_sheet(printing, server, "joint-heat")
    press_print(sheet, "Print the guide")
    printing.evaluate("() => { document.documentElement.dataset.printing = 'guide'; }")
    printed = text_of_pdf(printing.pdf(format="A4"))
    for words in ("How this works", "Petra writes it down", "Hot joints and live studs"):
        assert without_spaces(words) in printed
    assert (
        without_spaces(sheet.page.locator("[data-sheet] label").first.inner_text()) not in printed
    )
    printing.goto(f"{server.url}checks/usual-mistakes/")
    mistakes = text_of_pdf(printing.pdf(format="A4"))
    for words in ("1. A cable joint without a lock", "10. Lights without a dimmer"):
        assert without_spaces(words) in mistakes


def test_the_browsers_own_print_command_prints_link_and_date_too(printing, server):
    texts = EVERY_FIELD["wire-drop"]
    link = link_to("wire-drop", texts)
    sheet = open_sheet(printing, server, "wire-drop")
    press_print(sheet)
    printing.evaluate("(link) => { location.hash = link; }", link)
    sheet.expect_answer(texts)
    pdf = printing.pdf(format="A4")
    assert pages_of(pdf) == 1
    printed = text_of_pdf(pdf)
    # The code printed before is that of other figures.
    expect(sheet.part("qr").locator("svg")).to_have_count(0)
    today = date.today()
    assert without_spaces(f"{today.day} {today:%B %Y}") in printed
    assert f"{server.url}checks/wire-drop/{link}" in printed


def test_paper_says_when_the_answer_is_not_that_of_the_figures(printing, server):
    sheet = open_sheet(printing, server, "wire-drop")
    sheet.type("current", "abc")
    sheet.expect_stale()
    expect(sheet.error("current")).to_be_visible()
    printed = text_of_pdf(printing.pdf(format="A4"))
    assert without_spaces(sheet.state.text_content()) in printed
    assert without_spaces(sheet.error("current").text_content()) in printed
