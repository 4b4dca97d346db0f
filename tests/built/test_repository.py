"""The repository as someone finds it who has only just cloned it."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

PROJECT = Path(__file__).parents[2]
README = (PROJECT / "README.md").read_text("utf-8")
# In two parts each, so that this file does not name them either.
HOSTS = [
    "".join(parts)
    for parts in (
        ("pypi", ".org"),
        ("pythonhosted", ".org"),
        ("npmjs", ".org"),
        ("npmjs", ".com"),
        ("yarnpkg", ".com"),
        ("jsdelivr", ".net"),
        ("unpkg", ".com"),
        ("anaconda", ".org"),
        ("proxy.golang", ".org"),
        ("crates", ".io"),
    )
]

COMMANDS = sorted(set(re.findall(r"build_scripts/[a-z_]+\b(?!\.)", README)))


def kept() -> list[Path]:
    """Return every file that is tracked or about to be."""
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    names = subprocess.run(command, cwd=PROJECT, capture_output=True, text=True, check=True).stdout
    files = [PROJECT / name for name in names.split("\0") if name]
    return [path for path in files if path.is_file()]


def texts() -> dict[str, str]:
    """Return every kept file that is text."""
    found = {}
    for path in kept():
        content = path.read_bytes()
        if b"\0" not in content:
            found[path.relative_to(PROJECT).as_posix()] = content.decode("utf-8")
    return found


def test_no_file_names_the_host_of_a_package_registry():
    for name, text in texts().items():
        assert not [host for host in HOSTS if host in text.lower()], name


def test_no_lock_file_holds_addresses():
    names = {path.name for path in kept()}
    assert "uv.lock" not in names
    assert '"resolved"' not in (PROJECT / "package-lock.json").read_text("utf-8")
    requirements = (PROJECT / "requirements.txt").read_text("utf-8")
    assert "://" not in requirements
    options = [line for line in requirements.splitlines() if line.startswith("-")]
    assert options == []
    assert "--hash=sha256:" in requirements


def test_no_file_holds_a_path_of_one_machine():
    """A path in a home folder, or in the folder where this was first written.

    `/home/pyodide` is a place in the browser's own Python.
    """
    path = re.compile(r"(?<![\w.~$}])/(?:root|home(?!/pyodide)|work|Users)/[\w.-]+")
    for name, text in texts().items():
        assert not path.search(text), f"{name}: {path.search(text)}"


def test_nothing_that_is_made_is_kept():
    for path in kept():
        top = path.relative_to(PROJECT).parts[0]
        assert top not in {"site", "build", "node_modules", ".venv"}
        assert path.suffix not in {".pyc", ".map"}
        assert path.stat().st_size < 300_000, path


def test_the_licence_of_our_own_code_is_there():
    assert "Apache License" in (PROJECT / "LICENSE").read_text("utf-8")
    assert 'license = "Apache-2.0"' in (PROJECT / "pyproject.toml").read_text("utf-8")


@pytest.mark.parametrize("command", COMMANDS)
def test_a_command_that_the_readme_names_is_there_and_can_be_run(command):
    path = PROJECT / command
    assert path.is_file()
    assert os.access(path, os.X_OK)
    assert path.read_text("utf-8").startswith("#!")


def test_the_readme_begins_with_two_commands():
    block = re.search(r"```sh\n(.*?)```", README, re.S)
    assert block
    assert re.findall(r"^\./build_scripts/\w+", block[1], re.M) == [
        "./build_scripts/serve",
        "./build_scripts/test",
    ]


@pytest.mark.parametrize("line", re.findall(r"^lugwise (.*)$", README, re.M) or ["none"])
def test_an_example_for_the_terminal_works_as_the_readme_has_it(line):
    command = [sys.executable, "-m", "calc", *shlex.split(line)]
    done = subprocess.run(command, cwd=PROJECT, capture_output=True, text=True, timeout=60)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md", "tests/README.md"])
def test_a_file_that_a_document_leads_to_is_there(name):
    path = PROJECT / name
    text = re.sub(r"^```.*?^```", "", path.read_text("utf-8"), flags=re.MULTILINE | re.DOTALL)
    for target in re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", text):
        assert (path.parent / target).exists(), target


def test_the_example_of_the_library_works_as_the_readme_has_it():
    code = re.search(r"```python\n(.*?)```", README, re.S)
    assert code
    exec(code[1], {"print": lambda *_: None})


def test_what_runs_in_ci_is_what_anybody_runs():
    script = PROJECT / ".ci" / "run"
    assert os.access(script, os.X_OK)
    assert "build_scripts/test" in script.read_text("utf-8")
