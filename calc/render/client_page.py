"""The frame of a client's page, as it is built; the page fills it from a link."""

from typing import Any

from calc import find, work, worksheets
from calc.render.advice import IF, bar_html, sentence_html
from calc.render.client import phrases, template, words
from calc.render.html import Markup, el
from calc.render.van_client import frame_html
from calc.sheets import explanation_of
from calc.van.advised import ADVICE, CLEAR, NAMED, NEGLECT, REASONS, TITLE, headlines
from calc.van.compared import LABELS
from calc.van.record import KINDS
from calc.van.reviewed import REVIEWED

VAN = "van"
"""The name by which a link explains a van, where another has its worksheet's."""


def kit(name: str) -> dict[str, Any]:
    """Return what a client's page needs of the worksheet `name` before Python has started."""
    return template(find(name), explanation_of(name), work(name))


def van_kit() -> dict[str, Any]:
    """Return what a client's page needs of a van's review before Python has started.

    `findings` are the sentences that may stand among the reasons, by name, with empty places.
    """

    def put(name: str, _: int) -> Markup:
        named = {"data_first": True} if name == "first" else {"data_value": name}
        return el("b", "…", **named)

    def slot(name: str, number: int) -> Markup:
        return el("b", "…", data_found=number, data_named=name in NAMED)

    advice = (
        el(
            "span",
            el("small", IF) if n == CLEAR else None,
            sentence_html(text, put),
            data_advice=n,
            hidden=True,
        )
        for n, text in enumerate(ADVICE)
    )
    reasons = (
        el("li", el("b", "", data_where=True), el("span", "", data_headline=True),
           data_point=n, hidden=True)
        for n in range(1, REASONS + 1)
    )  # fmt: skip
    neglect = (el("p", text, data_neglect=n, hidden=True) for n, text in enumerate(NEGLECT))
    bars = (
        bar_html(label, el("b", "…", data_value=f"bar{n}"), 0, data_row=n, hidden=True)
        for n, label in enumerate(LABELS)
    )
    counted = ("stop", "stops", "caution", "cautions")
    return {
        "title": TITLE,
        "set": "",
        "html": frame_html(advice, reasons, neglect, bars),
        "findings": {key: sentence_html(text, slot) for key, text in headlines().items()},
        "kinds": {id: kind.to_client for id, kind in KINDS.items()},
        "usual": {},
        "labels": {},
        "choices": {},
        "signs": {},
        "words": sorted({*words(), *counted}),
        "phrases": sorted({text for name in REVIEWED for text in phrases(find(name))}),
        "listed": "All stops and cautions",
    }


def client_page() -> Markup:
    """Return the empty page, with what stands there where no link is opened."""
    return el(
        "section",
        el("h1", "Advice for a client", data_title=True),
        el(
            "p",
            "Somebody can send you an answer of Lugwise as a link that opens here. To make one, "
            "open a sheet or the review of a van and press “Explain to a client”.",
            data_none=True,
        ),
        _mine(),
        el(
            "div",
            el("p", "", data_who=True, class_="lc-who", hidden=True),
            el("p", "From the link, not checked yet.", role="status", data_told=True),
            el("div", "", data_said=True),
            el(
                "details",
                el("summary", "Numbers used", data_listed=True),
                el("div", "", data_used=True),
                class_="lc-used",
            ),
            el(
                "p",
                el("a", "See the working", href="../", data_working=True, class_="lw-button"),
                el("button", "Print", type="button", data_prints=True, class_="lw-button lw-plain"),
                class_="lc-ways",
            ),
            _foot(),
            data_body=True,
            hidden=True,
        ),
        data_client=" ".join((*worksheets(), VAN)),
        class_="lc",
        data_search_exclude=True,
    )


def _mine() -> Markup:
    """Return what only the person sees who makes the link."""
    return el(
        "form",
        el("label", "Your name", for_="lc-by"),
        el("input", id="lc-by", type="text", maxlength="40", data_by=True, autocomplete="name"),
        el("label", "A note to your client", for_="lc-note"),
        el("input", id="lc-note", type="text", maxlength="160", data_note=True, autocomplete="off"),
        el(
            "p",
            el("button", "Copy link", type="button", data_copy=True, class_="lw-button"),
            el("button", "Send", type="button", data_send=True, class_="lw-button", hidden=True),
        ),
        el("p", "", role="status", data_copied=True, class_="lw-hint"),
        el("label", "Link for your client", for_="lc-link", class_="lw-link-label"),
        el("input", id="lc-link", type="text", readonly=True, data_link=True, class_="lw-link"),
        el("p", "", data_size=True, class_="lw-hint"),
        data_mine=True,
        class_="lc-mine",
        hidden=True,
        aria_label="Send this to a client",
    )


def _foot() -> Markup:
    """Return what stands below the advice on paper."""
    return el(
        "div",
        el("div", "", data_qr=True, class_="lw-qr"),
        el(
            "p",
            "Lugwise, a calculator for camper-van electrical systems. Printed on ",
            el("span", "", data_printed=True),
            ". The same again, with its working: ",
            el("span", "", data_address=True),
        ),
        el(
            "p",
            "Not a substitute for the maker’s instructions, local rules or a qualified person.",
        ),
        class_="lw-print-only lc-foot",
    )
