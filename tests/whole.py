"""What the door replies once a sum has come to its end, on this machine's Python."""

import json
from collections.abc import Mapping
from typing import Any

from calc.render.answer import summary_html
from calc.render.bridge import ask
from calc.render.live import details_html, key_html
from calc.worksheet.answer import Answer


def whole_reply(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the reply to a request, the later stages of a long sum asked for as a page does."""
    reply = json.loads(ask(json.dumps(request)))
    while reply["rest"] < 1:
        stage = json.loads(ask(json.dumps({"sheet": request["sheet"], "rest": True})))
        reply |= {name: said for name, said in stage.items() if said}
    return reply


def live_html(answer: Answer) -> str:
    """Return the parts of a live sheet that show `answer`, the whole of it worked."""
    return f"{summary_html(answer)}{key_html(answer)}{details_html(answer)}"


def shown_html(reply: Mapping[str, Any]) -> str:
    """Return the same parts as a reply has them."""
    return f"{reply['gist']}{reply['key']}{reply['answer']}"
