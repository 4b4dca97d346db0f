"""The memory of a Python that has started, kept as a file: the quick way to start in the page.

It is taken from the finished bundle, after every worksheet has been opened once, and is the same
bytes at each build. Half of a heap is empty pages: only the others are written, so that there is
less to inflate.

    u32 length of the loader's own head | u32 length of the heap behind it | u32 count of pages |
    u32 number of each page | the head | filled up to a page | the pages, the last filled up with
    zeros                                                            (all little-endian)
"""

import struct

PAGE = 4096


def sparse(memory: bytes) -> bytes:
    """Return what `docs/assets/memory.js` fills a heap from: its pages that are not empty."""
    start = _length_of_head(memory)
    heap = memory[start:]
    pages = [heap[start : start + PAGE] for start in range(0, len(heap), PAGE)]
    numbers = [number for number, page in enumerate(pages) if any(page)]
    head = struct.pack(f"<{3 + len(numbers)}I", start, len(heap), len(numbers), *numbers)
    head += memory[:start]
    head += bytes(-len(head) % PAGE)
    return head + b"".join(pages[number].ljust(PAGE, b"\0") for number in numbers)


def filled(content: bytes) -> bytes:
    """Return the memory that `sparse` was made of: its inverse."""
    head, length, count = struct.unpack_from("<3I", content)
    numbers = struct.unpack_from(f"<{count}I", content, 12)
    after = 12 + 4 * count
    start = -(-(after + head) // PAGE) * PAGE
    heap = bytearray(length + PAGE)
    for place, number in enumerate(numbers):
        page = content[start + place * PAGE : start + (place + 1) * PAGE]
        heap[number * PAGE : number * PAGE + PAGE] = page
    return content[after : after + head] + bytes(heap[:length])


def _length_of_head(memory: bytes) -> int:
    """Return where the heap begins: the loader writes it second, after a mark of its own."""
    return struct.unpack_from("<2I", memory)[1]
