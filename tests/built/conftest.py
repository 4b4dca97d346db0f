"""The built site, made first if it is not there."""

import subprocess
from pathlib import Path

import pytest

PROJECT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def built() -> Path:
    """The folder of the built site, as a host would serve it."""
    site = PROJECT / "site"
    if not (site / "sw.js").is_file():
        subprocess.run([PROJECT / "build_scripts" / "build"], check=True, timeout=280)
    return site
