"""HTML as a tree, to ask what stands where without a browser; and whether it is whole."""

import re
from html.parser import HTMLParser
from xml.etree.ElementTree import Element, SubElement

VOID = {"area", "base", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"}

TAG = re.compile(r'<(/?)([A-Za-z][\w-]*)((?:\s[\w:-]+(?:="[^"<>]*")?)*)>')
ATTRIBUTE = re.compile(r'\s([\w:-]+)(?:="([^"]*)")?')


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.root = Element("root")
        self.open = [self.root]

    def handle_starttag(self, tag, attributes):
        kept = {name: value if value is not None else "" for name, value in attributes}
        element = SubElement(self.open[-1], tag, kept)
        if tag not in VOID:
            self.open.append(element)

    def handle_startendtag(self, tag, attributes):
        SubElement(self.open[-1], tag, {name: value or "" for name, value in attributes})

    def handle_endtag(self, tag):
        for place in range(len(self.open) - 1, 0, -1):
            if self.open[place].tag == tag:
                del self.open[place:]
                break

    def handle_data(self, data):
        above = self.open[-1]
        if len(above):
            above[-1].tail = (above[-1].tail or "") + data
        else:
            above.text = (above.text or "") + data


def whole(html: str) -> list[tuple[str, dict[str, str]]]:
    """Return every start tag of `html` with its attributes, of which a bare one is empty.

    Raises AssertionError where a browser would have to guess: a bracket that begins no tag, an
    attribute that stands twice, an element that is not closed or is closed within another.
    """
    found, still_open, end = [], [], 0
    for tag in TAG.finditer(html):
        closes, name, rest = tag.groups()
        between, end = html[end : tag.start()], tag.end()
        assert "<" not in between and ">" not in between, between
        if closes:
            assert not rest and still_open and still_open.pop() == name, f"</{name}> too early"
            continue
        pairs = ATTRIBUTE.findall(rest)
        attributes = dict(pairs)
        assert len(attributes) == len(pairs), f"<{name}> has an attribute twice"
        found.append((name, attributes))
        if name not in VOID:
            still_open.append(name)
    assert "<" not in html[end:] and ">" not in html[end:], html[end:]
    assert not still_open, f"not closed: {still_open}"
    return found


def tree(html: str) -> Element:
    """Return the elements of some HTML below one root."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader.root


def with_class(within: Element, name: str) -> list[Element]:
    """Return the elements that have a class, in order."""
    return [one for one in within.iter() if name in one.get("class", "").split()]


def text_of(element: Element) -> str:
    """Return all text within an element."""
    return "".join(element.itertext())


def spaced(text: str) -> str:
    """Return a text with one kind of space: a page keeps numbers and units together by another."""
    return re.sub(r"\s+", " ", text)
