"""What the door replies once a sum has come to its end, on this machine's Python."""

import json
from collections.abc import Mapping
from typing import Any

from calc.render.bridge import ask


def whole_reply(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the reply to a request, the later stages of a long sum asked for as a page does."""
    reply = json.loads(ask(json.dumps(request)))
    while reply["rest"] < 1:
        stage = json.loads(ask(json.dumps({"sheet": request["sheet"], "rest": True})))
        reply |= {name: said for name, said in stage.items() if said}
    return reply
