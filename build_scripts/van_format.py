"""The JSON schema of a van's file, as a file of the site.

MkDocs runs `on_files` as a hook, so that a guide can link to the schema as to any other file.
"""

import json

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

from calc.van.schema import schema

SCHEMA = "van/van.schema.json"
"""Where it stands on the site."""


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add the schema to the site's files."""
    content = json.dumps(schema(), ensure_ascii=False, separators=(",", ":"))
    files.append(File.generated(config, SCHEMA, content=content))
    return files
