"""What `dataclasses` writes for each class, compiled at build, which a first start was slow at.

Goes into the page's library as `sitecustomize`, which Python imports when it starts. `dataclasses`
writes the methods of a class as text and runs that, and compiling is what takes its time. So the
build keeps each text compiled (`runtime_bare.made`), in a file beside the module of the class. A
class whose text is not there is compiled as ever.
"""

import binascii
import dataclasses
import marshal
from types import CodeType

_left: dict[str, dict[int, list[CodeType]]] = {}  # by module, what no class has asked for yet


def run(text: str, scope: dict, names: dict) -> None:
    """Run what `dataclasses` wrote, as `exec` does."""
    exec(_made(text, scope) or text, scope, names)


def _made(text: str, scope: dict) -> CodeType | None:
    module = scope.get("__name__", "")
    if module not in _left:
        try:
            path = scope["__file__"].removesuffix(".pyc") + ".made"
            _left[module] = marshal.loads(scope["__loader__"].get_data(path))
        except (KeyError, OSError):  # made by hand, or a module without such a file
            _left[module] = {}
    left = _left[module].get(binascii.crc32(text.encode()))
    return left.pop() if left else None


vars(dataclasses)["exec"] = run
