"""What a built HTML page refers to, runs and styles inline."""

from dataclasses import dataclass, field
from html.parser import HTMLParser

URL_ATTRIBUTES = frozenset({"src", "href", "xlink:href", "data", "poster", "action", "formaction"})
SET_ATTRIBUTES = frozenset({"srcset", "imagesrcset"})

NOT_FETCHED = frozenset({"canonical"})
"""`rel` values of a <link> that only state an address."""

DATA_TYPES = frozenset({"application/json", "application/ld+json", "text/template"})
"""Types of a <script> that a browser never runs, so that it needs no hash."""


@dataclass(frozen=True)
class Reference:
    """An address in a page. `link`: followed only when a reader presses it."""

    tag: str
    url: str
    link: bool


@dataclass
class Page:
    """One page's text and what was found in it, in order."""

    text: str
    references: list[Reference] = field(default_factory=list)
    inline_scripts: list[str] = field(default_factory=list)
    inline_style_or_handlers: list[str] = field(default_factory=list)


class Reader(HTMLParser):
    def __init__(self, page: Page) -> None:
        super().__init__(convert_charrefs=True)
        self.page = page
        self.script: list[str] | None = None

    def handle_starttag(self, tag, attrs):
        values = {name: value or "" for name, value in attrs}
        if tag == "script":
            self.script = None
            if "src" not in values and values.get("type", "").lower() not in DATA_TYPES:
                self.script = []
        if tag == "style":
            self.page.inline_style_or_handlers.append("<style>")
        for name, value in values.items():
            if name == "style" or name.startswith("on"):
                shown = f'<{tag} {name}="{value[:40]}">'
                self.page.inline_style_or_handlers.append(shown)
        if tag == "link" and NOT_FETCHED & set(values.get("rel", "").split()):
            return
        urls = [values[name] for name in values if name in URL_ATTRIBUTES]
        for name in SET_ATTRIBUTES & values.keys():
            urls += [entry.split()[0] for entry in values[name].split(",") if entry.strip()]
        if tag == "meta" and values.get("http-equiv", "").lower() == "refresh":
            urls.append(values.get("content", "").partition("=")[2])
        self.page.references += [Reference(tag, url.strip(), tag in {"a", "area"}) for url in urls]

    def handle_startendtag(self, tag, attrs):
        self.handle_starttag(tag, attrs)

    def handle_data(self, data):
        if self.script is not None:
            self.script.append(data)

    def handle_endtag(self, tag):
        if tag == "script" and self.script is not None:
            self.page.inline_scripts.append("".join(self.script))
            self.script = None


def read_page(text: str) -> Page:
    """Read one page's HTML."""
    page = Page(text)
    reader = Reader(page)
    reader.feed(text)
    reader.close()
    return page
