"""Wall tables: the largest load for each conductor and length, to print and hang up.

Each sheet holds one limit of drop, so that its letters are large enough to be read off a wall.

A figure is the smaller of two: what keeps within the drop, and what a fuse that guards the wire
lets run for hours. Both come from the functions behind the worksheets, rounded down: who reads
"11" connects 11 A, and no verdict stands beside it on the wall.
"""

import hashlib
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from calc.electrical.ampacity import table_ampacity
from calc.electrical.conductors import GaugeReading, at_temperature, conductor, conductors
from calc.electrical.drop import largest_current
from calc.electrical.drop_limits import Duty, drop_limit
from calc.electrical.fuses import CONTINUOUS
from calc.render.html import Markup, el, join
from calc.sources import SOURCES
from calc.tables import SEEN, table
from calc.units.compare import at_most
from calc.units.shown import DOWN, NO_BREAK_SPACE, rounded, with_mm2

PROJECT = Path(__file__).resolve().parent.parent

VOLTAGES = (12, 24, 48)  # V
LIMITS = tuple(drop_limit(duty) for duty in Duty)
COPPER = 60.0  # °C, the copper of a warm, well loaded wire: as wire-drop takes it
CAUTIOUS, GOOD = 60.0, 105.0  # °C, insulation: of a cable without any marking, and of good cable
THICKEST = 120e-6  # m²
DIGITS = 2


@dataclass(frozen=True)
class Series:
    """The series of sizes and the one-way lengths of a wall table, and their unit."""

    id: str
    title: str
    lengths: tuple[int, ...]
    unit: str
    metres: float
    source: str

    @property
    def sizes(self) -> tuple[str, ...]:
        """Every size with a published ampacity, up to what a van's cables are made of."""
        return tuple(
            one.name
            for one in conductors()
            if one.series.lower() == self.id
            and ampacity(one.name, GOOD) is not None
            and at_most(one.area, THICKEST)
        )


FEET, METRES = (3, 5, 8, 10, 15, 20, 25, 30, 50), (1, 2, 3, 4, 5, 6, 8, 10, 15)
AWG = Series("awg", "AWG sizes, lengths in feet", FEET, "ft", 0.3048, "nec-8")
METRIC = Series("mm2", "mm² sizes, lengths in metres", METRES, "m", 1.0, "iec-60228")
SERIES = {series.id: series for series in (AWG, METRIC)}


@dataclass(frozen=True)
class Cell:
    """The largest load [A] as printed; `by_heat`: the wire's heat decides, not the drop."""

    text: str
    by_heat: bool


def ampacity(name: str, insulation: float) -> float | None:
    """Return what `name` carries [A] by table 5 with `insulation` [°C], None below the table."""
    return table_ampacity(name, insulation=insulation, gauge_reading=GaugeReading.AWG)


def largest_fuse(name: str, insulation: float) -> float:
    """Return the largest standard fuse [A] that guards `name`: at most its ampacity.

    `insulation` [°C]; air 30 °C, outside the engine space, two loaded conductors together.
    Ratings known only from memory are left out. Raises ValueError where no fuse is that small.
    """
    most = ampacity(name, insulation) or 0.0
    seen = [float(r["rating_a"]) for r in table("fuse_ratings").rows if r["confidence"] == SEEN]
    return max(rating for rating in seen if at_most(rating, most))


def cell(name: str, length: float, voltage: float, limit: float) -> Cell:
    """Return the largest load for the conductor `name` over `length` [m] one way.

    `voltage` [V] is the nominal one, `limit` the share of it that may be lost.
    """
    size = conductor(name)
    by_drop = largest_current(
        allowed=limit * voltage,
        length=length,
        per_length=at_temperature(size.plain, size.reference, COPPER),
    )
    by_heat = largest_fuse(name, CAUTIOUS) / CONTINUOUS
    return Cell(rounded(min(by_drop, by_heat), DIGITS, DOWN), by_heat < by_drop)


def cells(series: Series) -> Iterator[tuple[str, int, int, float, Cell]]:
    """Yield size, length [the series' unit], voltage [V], limit and cell of a series' sheets."""
    for voltage in VOLTAGES:
        for limit in LIMITS:
            for name in series.sizes:
                for length in series.lengths:
                    found = cell(name, length * series.metres, voltage, limit)
                    yield name, length, voltage, limit, found


def mark(series: Series) -> str:
    """Return six letters that change when any figure of its sheets does: paper has no update."""
    figures = [(*rest, one.text, one.by_heat) for *rest, one in cells(series)]
    figures += [(name, largest_fuse(name, c)) for name in series.sizes for c in (CAUTIOUS, GOOD)]
    return hashlib.sha256(repr(figures).encode()).hexdigest()[:6]


def version() -> str:
    """Return the project's version."""
    project = tomllib.loads((PROJECT / "pyproject.toml").read_text(encoding="utf-8"))
    return str(project["project"]["version"])


def sheet_html(name: str) -> Markup:
    """Return the wall tables of one series by its id: a sheet of paper for each limit of drop."""
    return join(*(_sheet(SERIES[name], limit) for limit in LIMITS))


def _sheet(series: Series, limit: float) -> Markup:
    lost = f"{limit * 100:g}{NO_BREAK_SPACE}%"
    return el(
        "section",
        el(
            "p",
            el(
                "strong",
                f"Largest load for hours, in amps, at {lost} drop. ",
                class_="lw-wall-title",
            ),
            f"{series.title[0].upper()}{series.title[1:]}, one way.",
            class_="lw-wall-head",
        ),
        el("p", "Slide a table sideways for longer runs.", class_="lw-cue"),
        el(
            "div",
            *(_block(series, voltage, limit) for voltage in VOLTAGES),
            _fuses(series),
            class_="lw-wall-grid",
        ),
        _conditions(series),
        class_="lw-wall",
        aria_label=f"Wall table: {series.title}, {lost} drop",
        data_search_exclude=True,
    )


def _block(series: Series, voltage: int, limit: float) -> Markup:
    lost = f"{rounded(limit * voltage, 3)}{NO_BREAK_SPACE}V"
    title = f"{voltage}{NO_BREAK_SPACE}V, {limit * 100:g}{NO_BREAK_SPACE}% lost"
    head = [el("th", with_mm2(_unit(series)), scope="col")]
    head += [el("th", f"{n}{NO_BREAK_SPACE}{series.unit}", scope="col") for n in series.lengths]
    rows = [
        el(
            "tr",
            el("th", _size(name), scope="row"),
            *(_cell(cell(name, n * series.metres, voltage, limit)) for n in series.lengths),
        )
        for name in series.sizes
    ]
    return _scroll(
        title,
        el("caption", el("strong", title), f" ({lost})"),
        el("thead", el("tr", *head)),
        el("tbody", *rows),
    )


def _cell(one: Cell) -> Markup:
    return el("td", one.text, "*" if one.by_heat else None, class_=one.by_heat and "lw-heat")


def _unit(series: Series) -> str:
    return series.sizes[0].split()[1].replace("mm2", "mm²")


def _size(name: str) -> str:
    return name.split()[0]


def _scroll(label: str, *parts: Markup) -> Markup:
    return el(
        "div",
        el("table", *parts, class_="lw-table lw-wall-table"),
        class_="lw-scroll",
        tabindex="0",
        role="group",  # within a region of its own, whose name the tables of another share
        aria_label=label,
    )


def _fuses(series: Series) -> Markup:
    """Return the largest fuse for each size, by what is printed on the cable."""
    kinds = (
        (f"nothing, or {CAUTIOUS:g}{NO_BREAK_SPACE}°C", CAUTIOUS),
        (f"{GOOD:g}{NO_BREAK_SPACE}°C", GOOD),
    )
    return _scroll(
        "Largest fuse",
        el("caption", el("strong", "Largest fuse, in amps,"), " by what the cable says"),
        el(
            "thead",
            el(
                "tr",
                el("th", with_mm2(_unit(series)), scope="col"),
                *(el("th", says, scope="col") for says, _ in kinds),
            ),
        ),
        el(
            "tbody",
            *(
                el(
                    "tr",
                    el("th", _size(name), scope="row"),
                    *(el("td", f"{largest_fuse(name, rated):g}") for _, rated in kinds),
                )
                for name in series.sizes
            ),
        ),
    )


def _conditions(series: Series) -> Markup:
    warmer = at_temperature(1.0, COPPER, GOOD) - 1
    said = (
        "3 %: feeders, chargers, pumps, electronics. 10 %: plain lighting. "
        "The return conductor is included. Between two lengths, use the longer; between two sizes, "
        "the smaller. Numbers are rounded down, so each load is within the limits.",
        f"* Heat sets the limit, not drop: the largest fuse for {CAUTIOUS:g} °C insulation, "
        f"divided by {CONTINUOUS:g}, so that the fuse can carry the load and protect the wire. Air "
        "30 °C, outside the engine space, two loaded conductors together. In hotter air or a "
        "larger bundle the ampacity is lower: see fuse choice.",
        f"Copper, stranded, plain, at {COPPER:g} °C. With {GOOD:g} °C insulation a wire can carry "
        f"more, but fully loaded it loses up to {warmer * 100:.0f} % more voltage: see wire drop. "
        "Copper-clad aluminium and thinner vehicle cable (SAE sizes) lose more than this table.",
        "Fit the fuse at the source, within 7 in (18 cm) of it. Its rating: at least "
        f"{CONTINUOUS:g} times the load and at most the fuse above. Its voltage rating must suit "
        "the system, its interrupting rating the short-circuit current.",
        "Not a substitute for the maker’s instructions, local rules or a qualified person.",
    )
    sources = (series.source, "33cfr-table", "33cfr-place", "nec-125", "fuse-ratings", "abyc-drop")
    named = "; ".join(str(SOURCES[key]) for key in sources)
    return el(
        "div",
        el("ul", *(el("li", text) for text in said)),
        el(
            "p",
            *("Sources: ", named, ". The limits are for boats: vans have none of their own."),
            class_="lw-wall-sources",
        ),
        el(
            "p",
            join("Lugwise ", version(), ", mark ", el("b", mark(series)), "."),
            el("span", " ", el("span", "", data_here=True), class_="lw-print-only"),
            class_="lw-wall-foot",
        ),
        class_="lw-wall-notes",
    )
