"""What is packed for others is the same for the same commit, and says what it is made of."""

import hashlib
import json
import shutil
import time
import tomllib
import zipfile

from build_scripts import release
from build_scripts.shipped import materials

FILES = {"site/index.html": b"<p>lamp</p>", "README.txt": b"read me", "site/a/b.js": b"1;" * 500}


def test_packed_twice_it_is_the_same_and_dated_by_the_commit(tmp_path):
    one, other = tmp_path / "one.zip", tmp_path / "other.zip"
    release.pack(one, FILES, 1_700_000_001, "lugwise-1")
    release.pack(other, dict(reversed(FILES.items())), 1_700_000_001, "lugwise-1")
    assert one.read_bytes() == other.read_bytes()
    with zipfile.ZipFile(one) as packed:
        assert packed.namelist() == sorted(f"lugwise-1/{name}" for name in FILES)
        # 1 700 000 001 s is 2023-11-14 22:13:21 UTC; a zip keeps even seconds.
        assert {entry.date_time for entry in packed.infolist()} == {(2023, 11, 14, 22, 13, 20)}
        assert packed.read("lugwise-1/site/a/b.js") == FILES["site/a/b.js"]


def test_a_release_is_the_same_in_every_zone_and_its_checksums_hold(tmp_path, monkeypatch):
    project = tmp_path / "project"
    (project / "site").mkdir(parents=True)
    (project / "site" / "index.html").write_bytes(FILES["site/index.html"])
    for name in ("pyproject.toml", "LICENSE", "CHANGELOG.md"):
        shutil.copy(release.PROJECT / name, project / name)
    monkeypatch.setattr(release, "PROJECT", project)
    made = []
    for zone in ("UTC", "America/New_York"):
        monkeypatch.setenv("TZ", zone)
        time.tzset()
        monkeypatch.setattr(release, "RELEASE", project / "build" / zone)
        assert release.main("1700000001", "0" * 40) == 0
        files = {file.name: file.read_bytes() for file in (project / "build" / zone).iterdir()}
        for line in files["SHA256SUMS"].decode().splitlines():
            digest, name = line.split()
            assert hashlib.sha256(files[name]).hexdigest() == digest
        made.append(files)
    monkeypatch.undo()
    time.tzset()
    assert made[0] == made[1]
    assert len(made[0]) == 4


def test_a_release_s_bill_of_materials_is_the_site_s_with_the_time_of_the_commit():
    bill = json.loads(release.dated(materials(), 1_700_000_001))
    assert bill["metadata"].pop("timestamp") == "2023-11-14T22:13:21Z"
    assert bill == json.loads(materials())


def test_this_version_has_notes_in_the_changelog():
    project = tomllib.loads((release.PROJECT / "pyproject.toml").read_text("utf-8"))["project"]
    assert release.notes(project["version"]).startswith(f"## {project['version']}")
