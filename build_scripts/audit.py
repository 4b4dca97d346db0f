"""Audit what is installed against the two locks: `python -m build_scripts.audit`.

What can be told from the locks alone is checked: one version and a hash of each package, each asked
for by something, and the installed ones the same. Holes that became known since are asked of npm's
own audit; where that cannot be asked, it is said, and nothing is taken for sound.
"""

import json
import re
import subprocess
import sys
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any

from packaging.requirements import Requirement

PROJECT = Path(__file__).resolve().parent.parent
ANSWER_WITHIN = 60  # seconds
SOON = ("--fetch-retries=0", "--fetch-timeout=10000")  # without a network it is known at once


def main() -> int:
    """Audit, report, and return the exit code."""
    requirements = (PROJECT / "requirements.txt").read_text("utf-8")
    lock = json.loads((PROJECT / "package-lock.json").read_text("utf-8"))
    found = [*python_problems(requirements), *npm_problems(lock)]
    holes = npm_holes()
    if holes is None:
        print("Audit: npm's list of known holes cannot be asked here, and was not.")
    else:
        found += holes
    print("Audit: known holes of Python packages are not looked up; no client for it is locked.")
    print("\n".join(found) or f"Audit: {requirements.count('==')} Python packages are as locked.")
    return 1 if found else 0


def python_problems(requirements: str) -> Iterator[str]:
    """Yield what is wrong with the lock of the Python packages, or with what is installed."""
    entries = re.split(r"\n(?=\S)", requirements.strip())
    for entry in entries:
        told = entry.split(" \\")[0].strip()
        pinned = Requirement(told)
        if not re.fullmatch(r"==[^,*]+", str(pinned.specifier)):
            yield f"{told} is not one version."
            continue
        if not re.search(r"--hash=sha256:[0-9a-f]{64}", entry):
            yield f"{told} has no hash."
        if "# via" not in entry:
            yield f"{told} is asked for by nothing."
        if pinned.marker and not pinned.marker.evaluate():
            continue
        wanted = str(pinned.specifier).removeprefix("==")
        try:
            here = version(pinned.name)
        except PackageNotFoundError:
            here = "not"
        if here != wanted:
            yield f"{pinned.name} {wanted} is locked, {here} installed."


def npm_problems(lock: dict[str, Any]) -> Iterator[str]:
    """Yield what is wrong with the lock of the npm packages, or with what is installed."""
    for place, told in lock["packages"].items():
        if not place:
            continue
        if not re.fullmatch(r"sha512-[\w+/]{86}==", told.get("integrity", "")):
            yield f"{place} has no hash."
        file = PROJECT / place / "package.json"
        here = json.loads(file.read_text("utf-8"))["version"] if file.is_file() else "not"
        if here != told["version"]:
            yield f"{place} {told['version']} is locked, {here} installed."


def npm_holes() -> list[str] | None:
    """Return the holes that npm knows of in the locked packages, or None if it cannot be asked."""
    command = ["npm", "audit", "--json", "--package-lock-only", *SOON]
    try:
        done = subprocess.run(
            command, cwd=PROJECT, capture_output=True, text=True, timeout=ANSWER_WITHIN
        )
        told = json.loads(done.stdout)
    except (OSError, subprocess.TimeoutExpired, json.JSONDecodeError):
        return None
    if "vulnerabilities" not in told:
        return None
    return [f"{name}: {one.get('severity')}" for name, one in told["vulnerabilities"].items()]


if __name__ == "__main__":
    sys.exit(main())
