"""What goes into the page's copy of the library: the same code without what nothing there reads."""

import gzip

from build_scripts.runtime_files import lean, packed

SOURCE = b'''
"""A module."""
from dataclasses import dataclass

LIMIT: int = 3
"""What it is."""

@dataclass(frozen=True)
class Found:
    """A class."""

    value: float

    @property
    def twice(self) -> float:
        """A property."""
        return 2 * self.value

def only_words(): "said"

def work(value: float, *rest: int, **more: str) -> Found:
    """A function."""
    assert value, "heard"
    def inner(x: int) -> int:
        return x
    return Found(inner(value) + len(rest) + LIMIT)
'''


def test_the_lean_copy_does_the_same_without_words_and_annotations_of_functions():
    names: dict = {"__name__": "lean"}
    exec(compile(lean(SOURCE), "lean", "exec"), names)
    assert names["work"](1.0, 5).twice == 10.0
    assert names["only_words"]() is None
    assert "__doc__" not in names and names["work"].__doc__ is None
    assert names["work"].__annotations__ == {}
    assert names["Found"].__annotations__ == {"value": float}
    assert names["Found"].twice.fget.__annotations__ == {"return": float}  # tells a value's kind
    try:
        names["work"](0.0)
    except AssertionError as heard:
        assert str(heard) == "heard"
    else:
        raise AssertionError("an assert was lost")


def test_what_is_packed_opens_anywhere_and_is_the_same_each_time():
    content = bytes(range(256)) * 500
    assert gzip.decompress(packed(content)) == content
    assert packed(content) == packed(content)
