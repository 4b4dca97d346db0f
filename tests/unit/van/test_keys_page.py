"""The page of the file format names every part and key there is, and its examples are true."""

import re
from pathlib import Path

import pytest

from build_scripts.made import PARTS as MADE
from calc.van.files import read_van
from calc.van.parts import PARTS

GUIDES = Path(__file__).parents[3] / "docs" / "van"
NAMES = ("plan", "inspect", "hand-over", "next-year", "file-format")
FENCE = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)


def text_of(name: str) -> str:
    return (GUIDES / f"{name}.md").read_text("utf-8")


def test_every_part_and_every_key_stands_on_the_page():
    html = MADE["van-keys"]()
    for kind in PARTS:
        head = f"<code>[[{kind.id}]]</code>" if kind.many else f"<code>[{kind.id}]</code>"
        own = html.split(head)[1].split("</details>")[0]
        keys = re.findall(r'<th scope="row"><code>([a-z_]+)</code></th>', own)
        assert keys == [key.id for key in kind.keys]
        for key in kind.keys:
            assert key.field.label.replace("&", "&amp;") in own
    proven = sum(key.safety for kind in PARTS for key in kind.keys)
    assert html.count("must be proven") == proven


def test_the_small_file_on_the_page_is_read():
    (file,) = (body for name, body in FENCE.findall(text_of("file-format")) if name == "toml")
    van = read_van(file)
    fridge = van.by_id("fridge")
    assert van.inspection and fridge.si("length") == pytest.approx(3.2)
    assert [one.text for one in fridge["measured_drop"].statements] == ["180 mV", "210 mV"]


@pytest.mark.parametrize("name", NAMES)
def test_a_guide_is_neither_too_short_nor_too_long_warns_and_leads_on(name):
    text = text_of(name)
    body = FENCE.sub("", text.split("---\n", 2)[2])
    words = re.findall(r"[^\W\d_]+(?:['’-][^\W\d_]+)*", re.sub(r"\]\([^)]*\)", "]", body))
    assert 400 <= len(words) <= 900
    assert "!!! warning" in text
    assert re.search(r"\]\((?:\.\./checks/)?[a-z-]+\.(?:md|schema\.json|van\.schema\.json)", text)
