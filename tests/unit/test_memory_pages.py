"""A started Python's memory, written without its empty pages."""

import struct

import pytest

from build_scripts.runtime_memory import PAGE, checksum, filled, parted, sparse

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
@pytest.mark.parametrize("fresh", [b"", FULL * 2, EMPTY + b"\2" * PAGE + FULL + b"\1" * 7])
def test_a_memory_comes_back_as_it_was(memory, fresh):
    head, heap = parted(HEAD + memory)
    assert (head, filled(sparse(heap, fresh), fresh)) == (HEAD, memory)


def test_empty_pages_and_those_of_a_new_module_are_not_written():
    """One page of numbers, and the two that hold something; then the last of them alone."""
    memory = EMPTY * 500 + FULL + EMPTY * 400 + FULL
    assert len(sparse(memory, b"")) == 3 * PAGE
    assert len(sparse(memory, EMPTY * 500 + FULL * 2)) == 2 * PAGE


def test_the_sum_is_that_of_the_page():
    """FNV-1a's prime and step; the page begins with 0 and takes four bytes at a time."""
    assert checksum(struct.pack("<2I", 1, 0)) == 0x01000193**2 % 2**32
    assert checksum(bytes(PAGE)) == 0 != checksum(bytes(4) + b"\1\0\0\0")
