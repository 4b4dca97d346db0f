"""What is packed for others is the same for the same commit, and says what it is made of."""

import json
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


def test_a_release_s_bill_of_materials_is_the_site_s_with_the_time_of_the_commit():
    bill = json.loads(release.dated(materials(), 1_700_000_001))
    assert bill["metadata"].pop("timestamp") == "2023-11-14T22:13:21Z"
    assert bill == json.loads(materials())


def test_this_version_has_notes_in_the_changelog():
    project = tomllib.loads((release.PROJECT / "pyproject.toml").read_text("utf-8"))["project"]
    assert release.notes(project["version"]).startswith(f"## {project['version']}")
