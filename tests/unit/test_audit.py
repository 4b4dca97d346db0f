"""A lock that lacks a hash, holds a range or is not what is installed is told."""

import json

from build_scripts import audit

REQUIREMENTS = (audit.PROJECT / "requirements.txt").read_text("utf-8")
LOCK = json.loads((audit.PROJECT / "package-lock.json").read_text("utf-8"))


def test_what_is_locked_is_what_is_installed():
    assert [*audit.python_problems(REQUIREMENTS), *audit.npm_problems(LOCK)] == []


def test_what_a_lock_lacks_is_told():
    no_hash = "segno==1.6.6 \\\n    # via -r requirements.in"
    range_ = f"segno>=1.6 \\\n    --hash=sha256:{'0' * 64}\n    # via -r requirements.in"
    other = f"segno==1.6.5 \\\n    --hash=sha256:{'0' * 64}"
    assert [*audit.python_problems(no_hash)] == ["segno==1.6.6 has no hash."]
    assert [*audit.python_problems(range_)] == ["segno>=1.6 is not one version."]
    assert [*audit.python_problems(other)] == [
        "segno==1.6.5 is asked for by nothing.",
        "segno 1.6.5 is locked, 1.6.6 installed.",
    ]
    changed = {"packages": {"node_modules/pyodide": {"version": "1.0.0", "integrity": "sha1-a"}}}
    assert len([*audit.npm_problems(changed)]) == 2


def test_where_npm_cannot_be_asked_nothing_is_taken_for_sound(monkeypatch):
    monkeypatch.setenv("PATH", "")
    assert audit.npm_holes() is None
