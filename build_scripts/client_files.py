"""The sentences that a client's page needs before Python has started: a file for each sheet and one
for vans.
"""

import json
from pathlib import Path

import calc
from calc.render.client_page import VAN, kit, van_kit

FOLDER = Path("assets") / "client"


def write(site: Path) -> None:
    """Write the templates of every sheet and of a van into `assets/client` of a site."""
    (site / FOLDER).mkdir(parents=True, exist_ok=True)
    for name in (*calc.worksheets(), VAN):
        own = van_kit() if name == VAN else kit(name)
        text = json.dumps(own, ensure_ascii=False, separators=(",", ":"))
        (site / FOLDER / f"{name}.json").write_text(text, "utf-8")
