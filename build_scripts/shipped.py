"""What the site ships of others, from `shipped.toml`: for the licence page and a bill of materials.

MkDocs runs `on_files` as a hook, so that the page can link to the bill as to any other file.
"""

import json
import re
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

PROJECT = Path(__file__).resolve().parent.parent
LICENCES = PROJECT / "LICENSES"

MATERIALS = "materials.json"
"""Where the bill of materials stands on the site."""

STATES = {"Material for MkDocs": "as the theme packs it"}
"""What was done to a part that another brings along; else it is as that one brings it."""


@dataclass(frozen=True)
class Part:
    """One part that the site ships and others made; the fields are those of `shipped.toml`."""

    name: str
    version: str
    """A number, or "as in" the part that brings it along, where it does not say its own."""
    licence: str
    text: str
    does: str
    source: str
    within: str = ""
    state: str = ""
    notices: str = ""
    package: str = ""
    """What a bill of materials calls it: the kind of package and its name."""

    @property
    def numbered(self) -> bool:
        """Whether its version is a number."""
        return self.version[:1].isdigit()

    @property
    def ref(self) -> str:
        """A name without blanks or signs, for what refers to it."""
        return re.sub(r"[^a-z0-9.]+", "-", self.name.lower()).strip("-")

    @property
    def texts(self) -> list[Path]:
        """Its licence and further notices. Raises ValueError if one is not there."""
        files = [LICENCES / f"{name}.txt" for name in (self.text, self.notices) if name]
        if missing := [file.name for file in files if not file.is_file()]:
            raise ValueError(f"LICENSES has no {missing[0]}")
        return files


def tables() -> list[dict[str, Any]]:
    """Return the tables of `shipped.toml` as they stand."""
    file = Path(__file__).with_suffix(".toml")
    found: list[dict[str, Any]] = tomllib.loads(file.read_text("utf-8"))["part"]
    return found


def parts() -> list[Part]:
    """Return every part, with the versions of the locks. Raises ValueError if a lock lacks one."""
    return [_part(table) for table in tables()]


def _part(table: dict[str, Any]) -> Part:
    name = table["name"]
    kind, called = "generic", re.sub(r"\W+", "-", name.lower()).strip("-")
    version = table["version"]
    if version == "npm":
        kind, version = "npm", _lock("package-lock.json")["packages"][f"node_modules/{called}"]
        version = version["version"]
    elif version == "python":
        version = _lock("node_modules/pyodide/pyodide-lock.json")["info"]["python"]
    elif version == "pypi":
        kind, called = "pypi", table.get("pypi", called)
        version = _pinned(called)
    elif "theme" in table:
        kind, called = "npm", table["theme"]
    told = {key: table[key] for key in ("licence", "text", "does", "source")}
    within = table.get("within", "")
    state = table.get("state") or STATES.get(within) or f"as {within} brings it"
    return Part(
        name,
        version,
        **told,
        within=within,
        state=state,
        notices=table.get("notices", ""),
        package=f"{kind}/{called}",
    )


def _lock(name: str) -> Any:
    return json.loads((PROJECT / name).read_text("utf-8"))


def _pinned(name: str) -> str:
    pins = (PROJECT / "requirements.txt").read_text("utf-8")
    found = re.search(rf"^{re.escape(name)}==(\S+)", pins, re.MULTILINE)
    if found is None:
        raise ValueError(f"requirements.txt does not pin {name}")
    return found[1]


def bill_of_materials(version: str) -> dict[str, Any]:
    """Return what the site of Lugwise's `version` ships of others, in the form of CycloneDX 1.6."""
    every = parts()
    by_name = {part.name: part for part in every}
    inside: dict[str, list[str]] = {"lugwise": []}
    for part in every:
        inside.setdefault(by_name[part.within].ref if part.within else "lugwise", []).append(
            part.ref
        )
    return {
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {
            "component": {
                "type": "application",
                "bom-ref": "lugwise",
                "name": "lugwise",
                "version": version,
                "licenses": [{"license": {"id": "Apache-2.0"}}],
            }
        },
        "components": [_component(part) for part in every],
        "dependencies": [
            {"ref": ref, "dependsOn": sorted(refs)} for ref, refs in sorted(inside.items())
        ],
    }


def _component(part: Part) -> dict[str, Any]:
    known = f"@{part.version}" if part.numbered else ""
    told = "" if part.numbered else f"; version {part.version}"
    return {
        "type": "library",
        "bom-ref": part.ref,
        "name": part.name,
        **({"version": part.version} if part.numbered else {}),
        "description": f"{part.does} ({part.state}{told})",
        "licenses": [_licence(part.licence)],
        "purl": f"pkg:{part.package}{known}",
        "externalReferences": [{"type": "website", "url": f"https://{part.source.split(',')[0]}"}],
    }


def _licence(name: str) -> dict[str, Any]:
    if " WITH " in name:
        return {"expression": name}
    return {"license": {"name" if " " in name else "id": name}}


def materials() -> str:
    """Return the bill of materials as text, the same for the same locks."""
    project = tomllib.loads((PROJECT / "pyproject.toml").read_text("utf-8"))["project"]
    return json.dumps(bill_of_materials(project["version"]), indent=1) + "\n"


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add the bill to the site's files."""
    files.append(File.generated(config, MATERIALS, content=materials()))
    return files
