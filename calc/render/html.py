"""HTML and SVG elements as text. Everything that is not already `Markup` is escaped here.

In what is read, and not copied or drawn, a number stays with its unit (`kept_together`). The
standard `html` module would bring its table of two thousand names into the page.
"""

from collections.abc import Callable, Iterable
from functools import cache

from calc.units.shown import kept_together


class Markup(str):
    """Text that is already HTML."""

    __slots__ = ()


def el(tag: str, *children: object, **attributes: object) -> Markup:
    """Return an element. `None` and `False` leave an attribute or child out, `True` makes it bare.

    Attribute names are written with `_` for `-`; a trailing `_` keeps them apart from keywords.
    """
    head = f"<{tag}"
    for name, value in attributes.items():
        if value is None or value is False:
            continue
        plain = _plain(name)
        head += f" {plain}" if value is True else f' {plain}="{_escaped(str(value))}"'
    inside = _joined(children, _escaped if tag in _VERBATIM else _prose)
    if not inside and tag in _VOID:
        return Markup(f"{head}>")
    return Markup(f"{head}>{inside}</{tag}>")


def join(*children: object) -> Markup:
    """Return the children one after another, escaped unless they are markup."""
    return _joined(children, _prose)


def _joined(children: Iterable[object], written: Callable[[str], str]) -> Markup:
    parts: list[str] = []
    for child in children:
        # By its very type first: one answer has hundreds of parts.
        kind = type(child)
        if kind is Markup:
            parts.append(child)  # type: ignore[arg-type]
        elif kind is str:
            parts.append(written(child))  # type: ignore[arg-type]
        elif child is None or child is False:
            continue
        elif isinstance(child, (list, tuple)):
            parts.append(_joined(child, written))
        else:
            parts.append(child if isinstance(child, Markup) else written(str(child)))
    return Markup("".join(parts))


@cache
def _plain(name: str) -> str:
    return name.rstrip("_").replace("_", "-")


def _escaped(text: str) -> str:
    # Nearly all texts hold none of these, and four looks are quicker than one translation.
    if "&" in text or "<" in text or ">" in text or '"' in text:
        text = text.replace("&", "&amp;").replace("<", "&lt;")
        return text.replace(">", "&gt;").replace('"', "&quot;")
    return text


def _prose(text: str) -> str:
    return _escaped(kept_together(text))


_VERBATIM = {"code", "pre", "option", "style", "text", "title", "desc"}
_VOID = {"input", "br", "hr", "link"}
