"""How a sheet is shown that is walked step by step, as data for `calc.render.search`."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Walked:
    """What stands where on a page that shows one step at a time.

    `start` names the field that says what is sought, `path` the one that holds the way, `trail` the
    result that lists the steps so far. `starts` are the choices one begins with: each by its id,
    what people say, and what else they say; `danger` is the line above, `begin` the heading. `why`,
    `meter`, `expected`, `repair`, `ways`, `back` and `folded` name results in the order in which
    they stand; `cannot` says by the result that is expected what to do where it cannot be measured.
    `circuit` names the fields that stand on the fold of the form, behind `circuit_label`.
    """

    start: str
    path: str
    trail: str
    danger: str
    begin: str
    starts: tuple[tuple[str, str, str], ...]
    why: str
    meter: tuple[str, ...]
    expected: tuple[str, ...]
    cannot: tuple[tuple[str, str], ...]
    repair: tuple[str, ...]
    ways: tuple[str, ...]
    back: str
    folded: tuple[str, ...]
    circuit_label: str
    circuit: tuple[str, ...]
