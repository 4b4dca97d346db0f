"""Print the test files that are about one worksheet: they name it, and at most one other.

python -m tests.own_files fuse-choice
"""

import re
import sys
from pathlib import Path

import calc

FOLDERS = ("unit", "rules", "properties")
MOST = 2  # worksheets that a file is about


def own_files(sheet: str) -> list[Path]:
    """Return the files of tests that are about `sheet`."""
    names = {
        name: re.compile(rf"\b(?:{name}|{name.replace('-', '_')})\b") for name in calc.worksheets()
    }
    found = []
    for folder in FOLDERS:
        for path in sorted((Path(__file__).parent / folder).glob("test_*.py")):
            text = path.read_text("utf-8")
            named = {name for name, pattern in names.items() if pattern.search(text)}
            if sheet in named and len(named) <= MOST:
                found.append(path)
    return found


if __name__ == "__main__":
    root = Path(__file__).parents[1]
    print("\n".join(path.relative_to(root).as_posix() for path in own_files(sys.argv[1])))
