"""A started Python's memory, written without its empty pages."""

import pytest

from build_scripts.runtime_memory import PAGE, filled, sparse

FULL, EMPTY = b"\1" * PAGE, bytes(PAGE)


@pytest.mark.parametrize(
    "memory",
    [
        FULL,
        EMPTY,
        EMPTY + FULL + EMPTY + FULL,
        FULL + EMPTY + b"\0\2",
        FULL + b"\0" * 7,
        EMPTY * 1030 + FULL,
    ],
    ids=["one page", "none", "two of four", "an end within a page", "an empty end", "a long head"],
)
def test_a_memory_comes_back_as_it_was(memory):
    assert filled(sparse(memory)) == memory


def test_empty_pages_are_not_written():
    """One page of head, and the two that hold something."""
    assert len(sparse(EMPTY * 500 + FULL + EMPTY * 400 + FULL)) == 3 * PAGE
