"""The page “Use it from Python” is run as it stands."""

import doctest
import re
from pathlib import Path

import pytest

PAGE = Path(__file__).parents[2] / "docs" / "python.md"
BLOCKS = re.findall(r"^```python\n(.*?)^```$", PAGE.read_text("utf-8"), re.MULTILINE | re.DOTALL)


def test_every_example_does_what_the_page_says():
    assert len(BLOCKS) >= 8
    text = "\n".join(BLOCKS).replace("\u00a0", " ")
    found = doctest.DocTestParser().get_doctest(text, {}, PAGE.name, str(PAGE), 0)
    said: list[str] = []
    flags = doctest.NORMALIZE_WHITESPACE | doctest.IGNORE_EXCEPTION_DETAIL
    result = doctest.DocTestRunner(optionflags=flags).run(found, out=said.append)
    if result.failed:
        pytest.fail("".join(said))
