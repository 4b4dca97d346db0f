"""The field that remembers the way through a search. It stands in the link and is never typed."""

import re
from dataclasses import dataclass

from calc.worksheet.fields import ParsedInput
from calc.worksheet.rows import Text

LONGEST_PATH = 80
_PATH = re.compile(rf"[a-z0-9.-]{{1,{LONGEST_PATH}}}")
STRANGE = "?"


@dataclass(frozen=True, kw_only=True)
class Trail(Text):
    """A path through a search. Any text can be read: what is no path is told, and left out.

    A path begins with the choice of the field `start`; with another choice there it means nothing.
    """

    hidden: bool = True
    start: str

    def read(self, text: str) -> ParsedInput:
        path = text.strip().lower() if len(text) <= 2 * LONGEST_PATH else STRANGE
        if not _PATH.fullmatch(path):
            return ParsedInput(STRANGE, "not understood", text, text)
        return ParsedInput(path, path, path, path)
