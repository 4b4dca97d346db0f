"""HTML and SVG elements as text. Everything that is not already `Markup` is escaped here.

The standard `html` module would bring its table of two thousand names into the page.
"""


class Markup(str):
    """Text that is already HTML."""

    __slots__ = ()


def el(tag: str, *children: object, **attributes: object) -> Markup:
    """Return an element. `None` and `False` leave an attribute or child out, `True` makes it bare.

    Attribute names are written with `_` for `-`; a trailing `_` keeps them apart from keywords.
    """
    words = [tag]
    for name, value in attributes.items():
        if value is None or value is False:
            continue
        plain = name.rstrip("_").replace("_", "-")
        words.append(plain if value is True else f'{plain}="{_escaped(str(value))}"')
    inside = join(*children)
    if not inside and tag in _VOID:
        return Markup(f"<{' '.join(words)}>")
    return Markup(f"<{' '.join(words)}>{inside}</{tag}>")


def join(*children: object) -> Markup:
    """Return the children one after another, escaped unless they are markup."""
    parts: list[str] = []
    for child in children:
        if child is None or child is False:
            continue
        if isinstance(child, (list, tuple)):
            parts.append(join(*child))
        else:
            parts.append(child if isinstance(child, Markup) else _escaped(str(child)))
    return Markup("".join(parts))


def _escaped(text: str) -> str:
    # Nearly all texts hold none of these, and four looks are quicker than one translation.
    text = text.replace("&", "&amp;").replace("<", "&lt;")
    return text.replace(">", "&gt;").replace('"', "&quot;")


_VOID = {"input", "br", "hr", "link"}
