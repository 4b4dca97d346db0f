"""How wide words are: the advance widths of a broad sans serif, so that narrower ones fit too."""

from functools import lru_cache

# Thousandths of the size, rounded up, of a face as broad as any that systems use for their own.
_GROUPS = {
    320: "ijlIJ'’‘,.· \u00a0\u202f",
    420: ":;|/\\!()[]frt-‐‑",
    540: '“”"*°?_scz–',
    600: "kvxyLF",
    640: "abdeghnopqu0123456789$TEPYµ",
    700: "ABCKRSVXZ",
    790: "DGHNOQU&Ω",
    840: "−+×=~≈≤≥÷#<>^w→←",
    880: "M",
    1000: "%Wm@—…½¼¾",
}
_WIDTHS = {character: width for width, group in _GROUPS.items() for character in group}
_OTHER = 1000.0  # what is not in the list, such as a letter of another script
_WIDEST = 1400.0  # and pictures
_STRONG = 1.14  # how much broader the strong face is


@lru_cache(maxsize=4096)
def width(text: str, size: float, strong: bool = False) -> float:
    """Return how wide `text` is at most in letters of `size`, in the unit of the size."""
    total = sum([_WIDTHS.get(character) or _plain(character) for character in text])
    return total * size / 1000 * (_STRONG if strong else 1)


def _plain(character: str) -> float:
    """Return the width of a character that is not in the list."""
    if character < "\u0250":  # Latin with accents, as broad as its letters, or nearly
        return 800.0
    return _OTHER if character < "\u2e80" else _WIDEST
