"""The memory of a Python that has started, kept as a file: the quick way to start in the page.

It is taken from the finished bundle, after every worksheet has been opened once, and is the same
bytes at each build. Half of a heap is empty pages, and some are those that any new module holds:
only the others are written, so that there is less to inflate.

    u32 length of the heap | u32 count of pages | u32 count of pages that a new module holds |
    SHA-256 of those | u32 number of each page | u32 number of each that a new module holds |
    filled up to a page | the pages, the last filled up with zeros            (all little-endian)
"""

import base64
import hashlib
import struct
from collections.abc import Callable

PAGE = 4096
HEADER = struct.Struct("<3I32s")


def written(memory: bytes, fresh: bytes, packed: Callable[[bytes], bytes]) -> tuple[str, bytes]:
    """Return the loader's head of a memory as text, and the packed file of its heap.

    `fresh` is the heap of a new module.
    """
    head, heap = parted(memory)
    return base64.b64encode(head).decode(), packed(sparse(heap, fresh))


def parted(memory: bytes) -> tuple[bytes, bytes]:
    """Return the loader's own head of a memory, and the heap behind it.

    The loader writes second, after a mark of its own, where the heap begins.
    """
    start = struct.unpack_from("<2I", memory)[1]
    return memory[:start], memory[start:]


def sparse(heap: bytes, fresh: bytes) -> bytes:
    """Return what `docs/assets/memory.js` fills a heap from that is now as `fresh`."""
    pages = [heap[start : start + PAGE] for start in range(0, len(heap), PAGE)]
    full = [number for number, page in enumerate(pages) if any(page)]
    held = [
        n for n in full if pages[n] == fresh[n * PAGE : n * PAGE + PAGE] and len(pages[n]) == PAGE
    ]
    numbers = sorted({*full} - {*held})
    sum_ = hashlib.sha256(b"".join(pages[n] for n in held)).digest()
    listed = HEADER.pack(len(heap), len(numbers), len(held), sum_)
    listed += struct.pack(f"<{len(full)}I", *numbers, *held)
    listed += bytes(-len(listed) % PAGE)
    return listed + b"".join(pages[number].ljust(PAGE, b"\0") for number in numbers)


def filled(content: bytes, fresh: bytes) -> bytes:
    """Return the heap that `sparse` was made of: its inverse."""
    length, count, more, _ = HEADER.unpack_from(content)
    numbers = struct.unpack_from(f"<{count}I", content, HEADER.size)
    held = struct.unpack_from(f"<{more}I", content, HEADER.size + 4 * count)
    start = -(-(HEADER.size + 4 * (count + more)) // PAGE) * PAGE
    heap = bytearray(length + PAGE)
    for number in held:
        heap[number * PAGE : number * PAGE + PAGE] = fresh[number * PAGE : number * PAGE + PAGE]
    for place, number in enumerate(numbers):
        page = content[start + place * PAGE : start + (place + 1) * PAGE]
        heap[number * PAGE : number * PAGE + PAGE] = page
    return bytes(heap[:length])
