"""A started Python's memory, written without its empty pages."""

import struct

import pytest

from build_scripts.runtime_memory import PAGE, filled, parted, sparse

FULL, EMPTY = b"\1" * PAGE, bytes(PAGE)
HEAD = struct.pack("<5I", 7, 20, 0, 0, 9)
"""As the loader writes one: its own length stands in it second."""


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
    ids=["one page", "none", "two of four", "an end within a page", "an empty end", "a long list"],
)
def test_a_memory_comes_back_as_it_was(memory):
    head, heap = parted(HEAD + memory)
    assert (head, filled(sparse(heap))) == (HEAD, memory)


def test_empty_pages_are_not_written():
    """One page of numbers, and the two that hold something."""
    assert len(sparse(EMPTY * 500 + FULL + EMPTY * 400 + FULL)) == 3 * PAGE
