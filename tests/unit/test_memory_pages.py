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
@pytest.mark.parametrize("fresh", [b"", FULL * 2, EMPTY + b"\2" * PAGE + FULL + b"\1" * 7])
def test_a_memory_comes_back_as_it_was(memory, fresh):
    head, heap = parted(HEAD + memory)
    assert (head, filled(sparse(heap, fresh), fresh)) == (HEAD, memory)


def test_empty_pages_and_those_of_a_new_module_are_not_written():
    """One page of numbers, and the two that hold something; then the last of them alone."""
    memory = EMPTY * 500 + FULL + EMPTY * 400 + FULL
    assert len(sparse(memory, b"")) == 3 * PAGE
    assert len(sparse(memory, EMPTY * 500 + FULL * 2)) == 2 * PAGE


def test_what_a_new_module_holds_is_told_by_its_hash():
    """SHA-256 of two pages of ones, by `head -c 8192 /dev/zero | tr '\\0' '\\1' | sha256sum`."""
    told = "6ba042a6672c64272ce75901468fd210026cd674fe9f1e11b46c9302e47e2136"
    assert sparse(FULL + EMPTY + FULL + b"\2" * PAGE, FULL * 3)[12:44].hex() == told
