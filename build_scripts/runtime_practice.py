"""Asks about practice that the page's Python must answer alike before and after the trimming."""

import json
from typing import Any

import calc
from calc.practice.sets import asking

REPLIES = ("1 A", "2 furlong", "<b>", "none")


def requests() -> list[str]:
    """A question of every sheet with a reply, and sets as a form and as links send them."""
    asked: list[dict[str, Any]] = []
    for place, name in enumerate(calc.worksheets()):
        asked.append({"do": "ask", "sheet": name, "nr": place, "target": ""})
        reply = REPLIES[place % len(REPLIES)]
        asked.append({"do": "judge", "sheet": name, "nr": place, "reply": reply, "tries": 1})
    chosen = {"sheets": asking()[:3], "count": "6", "seed": "7", "target": "x/"}
    asked += [{"do": "set", **chosen}, {"do": "set", **chosen, "count": "1e9"}]
    links = ("#v=1&sheets=runtime,bank-size&count=4&seed=9", "#%FF&&=;", "")
    asked += [{"do": "set", "link": link, "target": "x/"} for link in links]
    return [json.dumps({"quiz": question}) for question in asked]
