"""What the site's search knows of a worksheet beside the words of its guide.

The form and the answer are kept out of the index, because a worked answer repeats the same words on
every page. Their labels, hints and choices are what people search for, so they are put back here.

The words of the glossary are kept out of its page's entry, where all of them together would answer
every query. Each is an entry of its own instead, so that "what is a shunt" finds one sentence.
"""

import json
import re
from pathlib import Path

import calc
from build_scripts import glossary
from calc.render.html import el
from calc.worksheet.fields import Choice, Field
from calc.worksheet.rows import Rows


def complete(site: Path) -> None:
    """Add to the search index what forms and answers say, and the words of the glossary."""
    file = site / "search" / "search_index.json"
    index = json.loads(file.read_text("utf-8"))
    sheets = {f"checks/{name}/": name for name in calc.worksheets()}
    for entry in index["docs"]:
        if name := sheets.pop(entry["location"], ""):
            entry["text"] = f"{entry['text']} {searched(name)}".strip()
            entry.setdefault("tags", []).append(calc.find(name).title)
    if sheets:
        raise ValueError(f"These pages are not in the search index: {', '.join(sheets)}.")
    index["docs"] += meanings()
    file.write_text(json.dumps(index, ensure_ascii=False, separators=(",", ":")), "utf-8")


AT_ONCE = re.compile(r'location\.protocol!=="file:"(?=\),\w+\("search"\)\))')
"""In the theme's script: whether it makes its index with the page, or when the search is opened."""


def wait(site: Path) -> None:
    """Let the theme make its index when someone opens the search, as it does from a file.

    At once, it takes each page a second of processor, while Python starts and wants it too.
    """
    (file,) = (site / "assets" / "javascripts").glob("bundle.*.min.js")
    text, count = AT_ONCE.subn("!1", file.read_text("utf-8"))
    if count != 1:
        raise ValueError(f"{file.name} no longer says when it makes the search index.")
    file.write_text(text, "utf-8")


def meanings() -> list[dict[str, str]]:
    """Return an entry for each word of the glossary, which leads to its sentence there."""
    return [
        {
            "location": f"glossary/#{term.id}",
            "title": f"{term.name[0].upper()}{term.name[1:]}",
            "text": el("p", term.says),
        }
        for term in glossary.terms()
    ]


def searched(name: str) -> str:
    """Return what may be found of the worksheet `name`, each phrase once."""
    sheet = calc.find(name)
    said = [sheet.title, sheet.about]
    for field in sheet.fields:
        said += _words(field)
    said += [result.label for result in sheet.results]
    phrases = dict.fromkeys(text.rstrip(".") for text in said if text)
    return ". ".join(phrases).replace("?. ", "? ")


def _words(field: Field) -> list[str]:
    if isinstance(field, Rows):
        return [field.label, *(word for column in field.columns for word in _words(column))]
    labels = [one.label or one.id for one in field.options] if isinstance(field, Choice) else []
    return [field.label, field.hint, *labels]
