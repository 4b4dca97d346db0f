"""What lies outside a table or a list of choices: refused, with what would be accepted."""

import re
from enum import StrEnum
from typing import NoReturn


class NotCovered(ValueError):
    """There is no figure for a `parameter`'s value; `accepted` says what there is one for.

    `accepted` goes on after the parameter's name: "must be 18 AWG or thicker.".
    """

    def __init__(self, parameter: str, accepted: str) -> None:
        super().__init__(parameter, accepted)
        self.parameter = parameter
        self.accepted = accepted

    def __str__(self) -> str:
        return f"{self.parameter} {self.accepted}"


class Enumeration(StrEnum):
    """One of a few names. Any other raises NotCovered, which lists those that are accepted.

    A member's value is the id that stands in links, with hyphens for spaces.
    """

    @classmethod
    def _missing_(cls, value: object) -> NoReturn:
        *others, last = (repr(str(one)) for one in cls)
        listed = f"{', '.join(others)} or {last}" if others else last
        raise NotCovered(_snake(cls.__name__), f"must be {listed}, not {value!r}.")


def _snake(name: str) -> str:
    return re.sub(r"(?<=[a-z])(?=[A-Z])", "_", name).lower()
