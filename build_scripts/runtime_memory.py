"""The memory of a Python that has started, kept as a file: the quick way to start in the page.

It is taken from the finished bundle, after every worksheet has been opened once, and is the same
bytes at each build. Half of a heap is empty pages, and some are those that any new module holds:
only the others are written, so that there is less to inflate.

    u32 length of the heap | u32 count of pages | u32 count of pages that a new module holds |
    u32 sum of those | u32 number of each page | u32 number of each that a new module holds |
    filled up to a page | the pages, the last filled up with zeros            (all little-endian)
"""

import base64
import struct
from collections.abc import Callable

PAGE = 4096


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
    sizes = len(heap), len(numbers), len(held), checksum(b"".join(pages[n] for n in held))
    listed = struct.pack(f"<{4 + len(full)}I", *sizes, *numbers, *held)
    listed += bytes(-len(listed) % PAGE)
    return listed + b"".join(pages[number].ljust(PAGE, b"\0") for number in numbers)


def checksum(content: bytes) -> int:
    """Return the sum that the page works out too, over words of four bytes (FNV-1a's step)."""
    found = 0
    for (word,) in struct.iter_unpack("<I", content):
        found = (found ^ word) * 0x01000193 & 0xFFFFFFFF
    return found


def filled(content: bytes, fresh: bytes) -> bytes:
    """Return the heap that `sparse` was made of: its inverse."""
    length, count, more, _ = struct.unpack_from("<4I", content)
    numbers = struct.unpack_from(f"<{count}I", content, 16)
    held = struct.unpack_from(f"<{more}I", content, 16 + 4 * count)
    start = -(-(16 + 4 * (count + more)) // PAGE) * PAGE
    heap = bytearray(length + PAGE)
    for number in held:
        heap[number * PAGE : number * PAGE + PAGE] = fresh[number * PAGE : number * PAGE + PAGE]
    for place, number in enumerate(numbers):
        page = content[start + place * PAGE : start + (place + 1) * PAGE]
        heap[number * PAGE : number * PAGE + PAGE] = page
    return bytes(heap[:length])
