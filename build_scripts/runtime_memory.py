"""The memory of a Python that has started, kept as a file: the quick way to start in the page.

It is taken from the finished bundle, after every worksheet has been opened once, and is the same
bytes at each build. Half of a heap is empty pages: only the others are written, so that there is
less to inflate.

    u32 length of the heap | u32 count of pages | u32 number of each page | filled up to a page |
    the pages, the last filled up with zeros                                  (all little-endian)
"""

import base64
import struct
from collections.abc import Callable

PAGE = 4096


def written(memory: bytes, packed: Callable[[bytes], bytes]) -> tuple[str, bytes]:
    """Return the loader's head of a memory as text, and the packed file of its heap."""
    head, heap = parted(memory)
    return base64.b64encode(head).decode(), packed(sparse(heap))


def parted(memory: bytes) -> tuple[bytes, bytes]:
    """Return the loader's own head of a memory, and the heap behind it.

    The loader writes second, after a mark of its own, where the heap begins.
    """
    start = struct.unpack_from("<2I", memory)[1]
    return memory[:start], memory[start:]


def sparse(heap: bytes) -> bytes:
    """Return what `docs/assets/memory.js` fills a heap from: its pages that are not empty."""
    pages = [heap[start : start + PAGE] for start in range(0, len(heap), PAGE)]
    numbers = [number for number, page in enumerate(pages) if any(page)]
    listed = struct.pack(f"<{2 + len(numbers)}I", len(heap), len(numbers), *numbers)
    listed += bytes(-len(listed) % PAGE)
    return listed + b"".join(pages[number].ljust(PAGE, b"\0") for number in numbers)


def filled(content: bytes) -> bytes:
    """Return the heap that `sparse` was made of: its inverse."""
    length, count = struct.unpack_from("<2I", content)
    numbers = struct.unpack_from(f"<{count}I", content, 8)
    start = -(-(8 + 4 * count) // PAGE) * PAGE
    heap = bytearray(length + PAGE)
    for place, number in enumerate(numbers):
        page = content[start + place * PAGE : start + (place + 1) * PAGE]
        heap[number * PAGE : number * PAGE + PAGE] = page
    return bytes(heap[:length])
