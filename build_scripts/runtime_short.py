"""Files of Python's own library of which the page's loader wants a few names only."""

from build_scripts.runtime_files import Files

SHORTENED = {
    # Without sockets it can open nothing, yet would bring in HTTP, mail and MIME: 160 KB packed.
    "urllib/request.py": "",
    # Only an address in brackets in a link is looked up there, and no link of ours has one.
    "ipaddress.py": "def ip_address(address):\n    raise ValueError(address)\n",
    # The loader wants no more of it than this name, and nothing here waits for anything; with all
    # of it come sockets, TLS, threads, logging and subprocesses, a sixth of Python's start.
    "asyncio/__init__.py": "def get_event_loop():\n    raise RuntimeError('nothing waits here')\n",
    # The loader counts the objects that Python holds of it, so they are taken all the same.
    "pyodide/webloop.py": """
from pyodide_js._api import scheduleCallback


def _initialize_event_loop():
    pass
""",
    # The page puts its archives in place by itself (docs/assets/place.js); this would bring in
    # every kind of packed file.
    "pyodide/_package_loader.py": """
from pyodide_js import loadedPackages


class _Place:
    def __init__(self, path):
        self.path = path

    def __str__(self):
        return self.path


SITE_PACKAGES, DSO_DIR = _Place(SITE), _Place("/usr/lib")


def init_loaded_packages():
    pass
""",
}
"""Library files that others in use import, cut down to what is used of them."""


def shortened(site_packages: str) -> Files:
    """Return those files; `site_packages` is where the page's Python reads its modules."""
    return {
        name: text.replace("SITE)", f"{site_packages!r})").encode()
        for name, text in SHORTENED.items()
    }
