"""The page's Python is made of the same bytes in any folder and timezone: it has one hash."""

import hashlib
from pathlib import Path

from build_scripts.runtime import (
    LIBRARY,
    OWN,
    PYODIDE,
    SITE_PACKAGES,
    boot_options,
    build_runtime,
    node,
)
from build_scripts.runtime_files import read_files, zipped
from tests.counts import often

SHEET = OWN / "sheets" / "wire" / "wire_drop"
ZONES = "UTC", "America/New_York", "Pacific/Kiritimati"


def hashes(folder: Path) -> dict[str, str]:
    """The SHA-256 of each file in a folder, by its name."""
    return {one.name: hashlib.sha256(one.read_bytes()).hexdigest() for one in folder.iterdir()}


def compiled(folder: Path) -> bytes:
    """One worksheet, compiled in a folder by the page's own Python."""
    folder.mkdir(parents=True)
    (folder / "one.zip").write_bytes(zipped(read_files(OWN.parent, [SHEET])))
    places = {"pyodide": PYODIDE, "stdlib": LIBRARY, "info": boot_options()["info"]}
    places |= {"folder": folder, "packages": SITE_PACKAGES, "own": Path("build_scripts").resolve()}
    job = {"kind": "compile", "optimise": False, "archives": [("one.zip", "one-pyc.zip")]}
    node(places | job)
    return (folder / "one-pyc.zip").read_bytes()


def test_what_the_page_starts_from_is_made_alike_in_another_folder_and_zone(
    built, tmp_path, monkeypatch
):
    """The code of a worksheet; in a long night all of the bundle, a minute for each zone."""
    found = []
    for zone in ZONES[:2]:
        monkeypatch.setenv("TZ", zone)
        found.append(compiled(tmp_path / zone / "a folder with a longer name"))
    assert found[0] == found[1]
    assert str(tmp_path).encode() not in found[0]
    for zone in ZONES[1 : often(1, len(ZONES))]:
        monkeypatch.setenv("TZ", zone)
        build_runtime(tmp_path / zone / "all")
        assert hashes(tmp_path / zone / "all") == hashes(built / "assets" / "runtime")
