"""The sentences that a client's page needs before Python has started: a file for each sheet."""

import json
from pathlib import Path

import calc
from calc.render.client_page import kit

FOLDER = Path("assets") / "client"


def write(site: Path) -> None:
    """Write the templates of every sheet into the folder `assets/client` of a site."""
    (site / FOLDER).mkdir(parents=True, exist_ok=True)
    for name in calc.worksheets():
        text = json.dumps(kit(name), ensure_ascii=False, separators=(",", ":"))
        (site / FOLDER / f"{name}.json").write_text(text, "utf-8")
