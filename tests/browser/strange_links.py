"""Links as a stranger may write them: our own grammar, spoilt at random."""

from random import Random
from urllib.parse import quote

import calc
from calc.worksheet.link import open_fragment, write
from tests.browser.sheet_helpers import ATTACK, EVERY_FIELD, usual
from tests.properties.test_texts_of_each_kind import any_text

MARKUP = (
    ATTACK,
    "<svg onload=window.pwned=1>",
    "<script>window.pwned=1</script>",
    "\"'><a href=javascript:window.pwned=1>",
    "${window.pwned=1}",
    "<base href=https://strange.example/>",
    "<link rel=stylesheet href=https://strange.example/>",
)
SIGNS = "&=#%?+;:~/\\\"'<>{}[]()|^` \u202e\u2066\u0000\u200b\ufeff\ud83d"

LONGEST = 65_536  # characters of a fragment that are read

NOTE = """() => {
  window.strange = [];
  document.addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) =>
    window.strange.push(`${violatedDirective} ${blockedURI}`));
}"""
"""Notes in the page what its policy refuses, for `UNHARMED`."""

UNHARMED = """() => {
  const bad = [...window.strange];
  if (window.pwned) bad.push("a script has run");
  if (document.querySelectorAll("[data-sheet]").length !== 1) bad.push("the sheet is gone");
  const markup = "[src=x], [onerror], [onload], a[href^='javascript']";
  if (document.querySelector(markup)) bad.push("markup");
  return bad;
}"""

OPEN = """async ([link, pace]) => {
  const box = document.querySelector("[data-sheet] [data-link]");
  const begun = performance.now();
  box.value = "";
  history.replaceState(history.state, "", `#${link}`);
  dispatchEvent(new HashChangeEvent("hashchange"));
  while (!box.value && performance.now() - begun < 30_000)
    await new Promise((go) => setTimeout(go, 2));
  const took = performance.now() - begun;
  await new Promise((go) => setTimeout(go, pace - took));
  return [box.value, took];
}"""


def strange_text(draw: Random) -> str:
    """Draw what stands in place of a value, or of a name."""
    way = draw.random()
    if way < 0.4:
        return any_text(draw)
    if way < 0.6:
        return draw.choice(MARKUP)
    if way < 0.8:
        return "".join(draw.choices(SIGNS, k=draw.randint(1, 40)))
    if way < 0.9:
        return draw.choice(("__proto__", "constructor", "toString", "hasOwnProperty", "van", "v"))
    return draw.choice("9x%&=") * draw.choice((100, 5_000, 70_000))


def strange_link(draw: Random, name: str) -> str:
    """Draw a fragment for a sheet, without its `#`; one in five of them can be read."""
    texts = dict(draw.choice((usual(name), EVERY_FIELD.get(name, usual(name)))))
    parts = write(calc.find(name), texts).split("&")
    for _ in range(draw.choice((0, 1, 1, 2, 5))):
        at = draw.randrange(len(parts) + 1)
        text = strange_text(draw)
        written = quote(text, safe="", errors="replace") if draw.random() < 0.6 else text
        key = parts[at % len(parts)].partition("=")[0]
        match draw.randrange(5):
            case 0:
                parts.insert(at, written)
            case 1:
                parts.insert(at, f"{written}={written}")
            case 2:
                parts.insert(at, parts[at % len(parts)])
            case 3:
                parts[at % len(parts)] = f"{key}={written}"
            case _:
                draw.shuffle(parts)
    return "&".join(parts).replace("\ud83d", "%ED%A0%BD")


def told(link: str, name: str) -> str:
    """The link that this machine's Python makes of one."""
    sheet = calc.find(name)
    return write(sheet, open_fragment(sheet, f"#{link}"[:LONGEST]).texts)


def is_heading(link: str) -> bool:
    """Whether a fragment is read as a heading's name: of a longer one the end is cut off first."""
    return "=" not in link[: LONGEST - 1]
