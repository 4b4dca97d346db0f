"""Pack the built site for others: `python -m build_scripts.release SECONDS COMMIT`.

The archive is the same for the same commit, whoever packs it and when: files stand in order, and
every date is the commit's (SECONDS since 1970, UTC). Beside it stand its checksum, the bill of
materials and the notes of the version.
"""

import hashlib
import json
import re
import sys
import time
import tomllib
import zipfile
from collections.abc import Mapping
from pathlib import Path

from build_scripts.shipped import materials

PROJECT = Path(__file__).resolve().parent.parent
RELEASE = PROJECT / "build" / "release"

READ_ME = """Lugwise {version}

The site is in the folder "site". It fetches nothing from outside, so that any plain server will do,
also from a USB stick. In this folder:

    python3 -m http.server --directory site 8000 --bind 127.0.0.1

then open localhost:8000 in a browser. A browser shows the pages from the files alone too, but then
no calculation runs, because it lets no script load from files.

Code and texts: Apache License 2.0. The page "Licences" names everything else that is in here.
It does not replace the maker's instructions, local rules or a qualified person.
"""


def main(seconds: str, commit: str) -> int:
    """Write the release, say where it is, and return the exit code."""
    version = tomllib.loads((PROJECT / "pyproject.toml").read_text("utf-8"))["project"]["version"]
    site = PROJECT / "site"
    files = {f"site/{file.relative_to(site).as_posix()}": file.read_bytes() for file in _in(site)}
    bill = dated(materials(), int(seconds))
    files |= {
        "README.txt": READ_ME.format(version=version).encode(),
        "LICENSE": (PROJECT / "LICENSE").read_bytes(),
        "materials.json": bill.encode(),
        "commit.txt": f"{commit}\n".encode(),
    }
    RELEASE.mkdir(parents=True, exist_ok=True)
    archive = RELEASE / f"lugwise-{version}.zip"
    pack(archive, files, int(seconds), f"lugwise-{version}")
    made = {
        f"lugwise-{version}-materials.json": bill,
        f"lugwise-{version}-notes.md": notes(version),
    }
    for name, text in made.items():
        (RELEASE / name).write_text(text, "utf-8")
    sums = [f"{_digest(RELEASE / name)}  {name}\n" for name in sorted((archive.name, *made))]
    (RELEASE / "SHA256SUMS").write_text("".join(sums), "utf-8")
    print(f"{archive.relative_to(PROJECT)}: {archive.stat().st_size / 1e6:.1f} MB")
    return 0


def pack(archive: Path, files: Mapping[str, bytes], seconds: int, folder: str) -> None:
    """Write `files` by name into the zip `archive`, under `folder`, all dated `seconds` (UTC)."""
    date = time.gmtime(max(seconds, 315532800))[:6]  # a zip begins in 1980
    with zipfile.ZipFile(archive, "w") as packed:
        for name in sorted(files):
            entry = zipfile.ZipInfo(f"{folder}/{name}", date)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            entry.create_system = 3  # else it tells on which system it was packed
            packed.writestr(entry, files[name], compresslevel=9)


def notes(version: str) -> str:
    """Return what the changelog says of `version`. Raises ValueError if it says nothing."""
    text = (PROJECT / "CHANGELOG.md").read_text("utf-8")
    for part in re.split(r"^(?=## )", text, flags=re.MULTILINE):
        if part.startswith(f"## {version}"):
            return part
    raise ValueError(f"CHANGELOG.md has no part on {version}")


def dated(bill: str, seconds: int) -> str:
    """Return a bill of materials with the time of the commit in it."""
    told = json.loads(bill)
    moment = time.strftime("%Y-%m-%dT%H:%M:%SZ", time.gmtime(seconds))
    told["metadata"] = {"timestamp": moment, **told["metadata"]}
    return json.dumps(told, indent=1) + "\n"


def _in(folder: Path) -> list[Path]:
    return sorted(file for file in folder.rglob("*") if file.is_file())


def _digest(file: Path) -> str:
    return hashlib.sha256(file.read_bytes()).hexdigest()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
