"""A van in a link: it opens whole or not at all, in bounded room."""

import binascii
import zlib

import pytest

import calc
from calc.van import link
from calc.van.demos import DEMOS, demo
from calc.van.files import write_van
from tests.counts import chance, often
from tests.van_samples import drawn_van, sound

OLD = "v=1&van=a-5BMcM61wfpaGJM54VkFGWC56jgE3jgbbqE-ojoFTn2Jju-Phxi1hXeNsOc0yRmWrUWfeKpFgA"
"""A link of the first day: it must open to the same van for ever."""


@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_comes_back_as_it_was(name):
    assert link.unpack(f"#{link.pack(demo(name))}") == demo(name)


def test_drawn_vans_come_back_as_they_were():
    rng = chance("van links")
    for _ in range(often(50, 2000)):
        van = drawn_van(rng)
        fragment = link.pack(van)
        assert link.unpack(fragment) == van
        assert len(fragment) == link.packed_size(van)
        assert set(fragment) <= set("=&-_") | set(map(chr, range(48, 123)))


def test_a_link_of_the_first_day_still_opens():
    assert write_van(link.unpack(OLD)) == OLD_FILE


OLD_FILE = """format = 1
none = ["shunt"]

[van]
name = "Thrift"
system = "24 V"

[[circuits]]
name = "fridge"
current = "3 A"
from = "fuse-block.3"
length = "3.2 m"
conductor = { found = "14 AWG", evidence = "told", who = "A. Brandt", when = "2026-11-20" }
fuse = "none"
"""


def bomb(size: int) -> str:
    """Return a link that unpacks to so many bytes."""
    return holding(b'{"format":1,"van":{"name":"' + b"x" * size + b'"}}')


def holding(data: bytes) -> str:
    """Return a link that holds some bytes."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    whole = zlib.crc32(data).to_bytes(4) + packer.compress(data) + packer.flush()
    code = binascii.b2a_base64(whole, newline=False).rstrip(b"=").decode()
    return f"v=1&van={code.replace('+', '-').replace('/', '_')}"


WHOLE = link.pack(sound())


@pytest.mark.parametrize(
    "fragment",
    ["", "#", "v=1", "v=1&van=", "v=1&van=%00", "v=1&van=<script>", "v=2&van=AAAA", "van=AAAA",
     "x" * 1_000_000, "v=1&van=" + "A" * 1_000_000, "v=1&van=A", "v=1&van=AAAAAAAA",
     WHOLE[:-1], WHOLE[:-5], WHOLE[:60],
     WHOLE + "A", WHOLE + "AAAA", f"v=99999&{WHOLE[4:]}", bomb(50_000_000), bomb(1_000_000),
     holding(b""), holding(b"\xff"), holding(b"[" * 100_000), holding(b'{"format":' + b"9" * 9999),
     holding(b'{"format":1,"van":[[[[[[[[]]]]]]]]}'), holding(b'{"format":2}')],
    ids=lambda text: text[:20],
)  # fmt: skip
def test_a_link_that_is_not_whole_or_not_ours_gets_a_sentence(fragment):
    with pytest.raises(calc.InputError) as error:
        link.unpack(fragment)
    assert all(problem.message for problem in error.value.problems)


def test_no_sign_of_a_link_can_be_wrong_without_being_told():
    place = len("v=1&van=")
    rng = chance("mangled links")
    for at in range(place, len(WHOLE), 3):
        sign = rng.choice([one for one in "AZaz09-_" if one != WHOLE[at]])
        mangled = WHOLE[:at] + sign + WHOLE[at + 1 :]
        try:
            assert link.unpack(mangled) == sound()  # the last sign may have bits to spare
        except calc.InputError:
            continue
