"""A van in a link: all of it in the fragment, packed, such as `v=1&van=q1YqS8wpTlWyUkq…`.

`v` is the number of the list of words with which it was packed. A link may come from a stranger, or
arrive cut short: it is unpacked in bounded room, and opens whole or not at all.
"""

from __future__ import annotations

import binascii
import json
import re
import zlib
from functools import cache

from calc.tables import text
from calc.van.files import read_van, van_as_data
from calc.van.record import Van
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

LONGEST = 8000  # characters; past that messengers and servers may cut a link: a file is better
VERSION = 1

_MOST_READ = 200_000  # characters of a fragment
_MOST_HELD = 2_000_000  # bytes, unpacked
_BITS = -15  # deflate alone, without zlib's own head
_CHECK = 4  # bytes of the check that it arrived whole
_FRAGMENT = re.compile(r"#?v=(\d{1,3})&van=([A-Za-z0-9_-]+)")


@cache
def _words() -> bytes:
    """Return what most vans say, frozen with the number of the version: packing refers to it."""
    return text("calc.van", "link_words.txt").encode()


def pack(van: Van) -> str:
    """Return the fragment, without `#`, from which `unpack` makes the same van."""
    data = json.dumps(van_as_data(van), ensure_ascii=False, separators=(",", ":")).encode()
    packer = zlib.compressobj(9, zlib.DEFLATED, _BITS, 9, zdict=_words())
    packed = packer.compress(data) + packer.flush()
    whole = zlib.crc32(data).to_bytes(_CHECK) + packed
    code = binascii.b2a_base64(whole, newline=False).rstrip(b"=").decode()
    return f"v={VERSION}&van={code.replace('+', '-').replace('/', '_')}"


def packed_size(van: Van) -> int:
    """Return how many characters a van's fragment has; beyond LONGEST a file is better."""
    return len(pack(van))


def unpack(fragment: str) -> Van:
    """Return the van that a link's fragment holds. Raises InputError."""
    match = _FRAGMENT.fullmatch(fragment.strip()[:_MOST_READ])
    if match is None:
        raise _refused("This link holds no van, or it is incomplete. Ask for it or a file.")
    if int(match[1]) != VERSION:
        raise _refused(
            f"This van link is of version {match[1]}; this copy reads version {VERSION}."
        )
    try:
        return read_van(_inflated(match[2]).decode())
    except (zlib.error, binascii.Error, UnicodeDecodeError):
        raise _refused("This van link is incomplete. Ask for it again, or for a file.") from None


def _inflated(code: str) -> bytes:
    """Return what is packed. Raises InputError, zlib.error and binascii.Error."""
    padded = code.replace("-", "+").replace("_", "/") + "=" * (-len(code) % 4)
    whole = binascii.a2b_base64(padded, strict_mode=True)
    opener = zlib.decompressobj(_BITS, zdict=_words())
    data = opener.decompress(whole[_CHECK:], _MOST_HELD + 1)
    if len(data) > _MOST_HELD:
        raise _refused("This van link holds far more than a van.")
    if not opener.eof or opener.unused_data or zlib.crc32(data).to_bytes(_CHECK) != whole[:_CHECK]:
        raise zlib.error("cut short")
    return data


def _refused(says: str) -> InputError:
    return InputError((Problem("", says),))
