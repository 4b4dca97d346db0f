"""`pip install .`: the library anywhere, its data, its types and its command."""

import os
import pickle
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

PROJECT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def installed(tmp_path_factory) -> Path:
    """Return a folder into which a copy of the project was installed."""
    source, target = tmp_path_factory.mktemp("source"), tmp_path_factory.mktemp("target")
    shutil.copytree(PROJECT / "calc", source / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(PROJECT / name, source / name)
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "install", "--quiet"]
    options = ["--no-deps", "--no-build-isolation", "--no-index", "--target", str(target)]
    done = subprocess.run([*pip, *options, str(source)], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return target


def run(installed: Path, *command: str, pipe: str = "") -> subprocess.CompletedProcess[str]:
    """Run a command that sees the installed package and not the project's folder."""
    words = [sys.executable, *command]
    shell = " ".join(f"'{word}'" for word in words) + (f" | {pipe}" if pipe else "")
    environment = {**os.environ, "PYTHONPATH": str(installed), "PYTHONDONTWRITEBYTECODE": "1"}
    return subprocess.run(
        ["/bin/sh", "-c", shell], capture_output=True, text=True, cwd=installed, env=environment
    )


def test_the_library_is_there_with_its_data_and_its_types(installed):
    assert (installed / "calc" / "py.typed").exists()
    ours = {path.relative_to(PROJECT).as_posix() for path in (PROJECT / "calc").rglob("*.*")}
    ours = {name for name in ours if "__pycache__" not in name and not name.endswith("~")}
    theirs = {path.relative_to(installed).as_posix() for path in installed.rglob("calc/**/*.*")}
    assert ours - theirs == set()
    code = (
        "import calc, sys, pickle; "
        "assert calc.__file__.startswith(sys.argv[1]), calc.__file__; "
        "print([calc.work(name).verdict for name in calc.worksheets()].count('stop') < 3)"
    )
    done = run(installed, "-c", code.replace("'", '"'), str(installed))
    assert (done.stdout.strip(), done.stderr) == ("True", "")


def test_the_command_works_and_a_reader_who_has_seen_enough_does_not_hurt_it(installed):
    command = installed / "bin" / "lugwise"
    assert command.exists()
    whole = run(installed, str(command), "wire-drop", "current=30 A")
    assert whole.returncode == 0
    assert "30" in whole.stdout
    for _ in range(3):
        short = run(installed, str(command), "week-ahead", pipe="head -n 1")
        assert (short.returncode, short.stderr) == (0, "")
    wrong = run(installed, str(command), "wire-drop", "current=abc")
    assert wrong.returncode == 2
    assert "Traceback" not in wrong.stderr
    assert wrong.stderr.startswith("Current must be a number")


def test_an_answer_goes_from_one_process_to_another(installed, tmp_path):
    """As a notebook's workers hand it on."""
    kept = tmp_path / "answer"
    code = (
        "import calc, pickle, sys; "
        'open(sys.argv[1], "wb").write(pickle.dumps([calc.work(n) for n in calc.worksheets()]))'
    )
    assert run(installed, "-c", code, str(kept)).stderr == ""
    answers = pickle.loads(kept.read_bytes())
    import calc

    assert [one.worksheet.id for one in answers] == list(calc.worksheets())
    for one in answers:
        again = calc.work(one.worksheet.id)
        assert (one.shown, one.sentence) == (again.shown, again.sentence)
