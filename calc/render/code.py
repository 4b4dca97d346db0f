"""The square code on a printed sheet: the link, readable by a phone's camera."""

LONGEST = 1500


def code_svg(text: str) -> str:
    """Return a QR code (ISO/IEC 18004, error level M, quiet zone of 4) of `text` as SVG.

    Returns nothing for a text too long to print readably.
    """
    if not 0 < len(text) <= LONGEST:
        return ""
    import segno  # only printing needs it, and the page should not wait for it

    return segno.make(text, error="m", micro=False).svg_inline(
        border=4, dark="#000", light="#fff", omitsize=True, svgclass="lw-code", lineclass=None
    )
