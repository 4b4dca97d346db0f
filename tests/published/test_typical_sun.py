"""Every month of every place in our table of typical sun, beside the month found another way."""

import csv
from collections.abc import Callable, Mapping
from pathlib import Path

import pandas as pd
import pvlib
import pytest
from pvlib.iotools import read_tmy2, read_tmy3

from calc.tables import table

MONTHS = range(1, 13)
DATA = Path(pvlib.__file__).parent / "data"
AGAIN = Path(__file__).parents[2] / "evidence" / "data" / "typical_sun_again.csv"
# The files of typical years that come with pvlib: how each is read.
SHIPPED: dict[str, Callable[[], tuple[pd.DataFrame, dict[str, float]]]] = {
    "sand-point": lambda: read_tmy3(DATA / "703165TY.csv", coerce_year=2023),
    "greensboro": lambda: read_tmy3(DATA / "723170TYA.CSV", coerce_year=2023),
    "miami": lambda: read_tmy2(DATA / "12839.tm2"),
}
# What is printed has four digits. Of light worked from its two parts the sun's place within the
# hour is not known: 2.1 % is the most that any month differs by, and a mistake would be more.
WITHIN = {"printed": 0.0005, "beam": 0.025}


def again() -> dict[str, dict[str, str]]:
    lines = AGAIN.read_text("utf-8").splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return {row["id"]: row for row in rows}


def row_of(name: str) -> Mapping[str, str]:
    return next(row for row in table("typical_sun").rows if row["id"] == name)


def ours(name: str) -> list[float]:
    """Return a place's months as our table has them [kWh/m² a day]."""
    return [float(row_of(name)[f"m{month}"]) for month in MONTHS]


def expect_at(name: str, latitude: float, altitude: float) -> None:
    """Assert that our table has the place there: a minute of arc, and a metre."""
    assert float(row_of(name)["latitude_deg"]) == pytest.approx(latitude, abs=1 / 60)
    assert float(row_of(name)["altitude_m"]) == pytest.approx(altitude, abs=1)


def test_every_place_is_found_another_way():
    names = {row["id"] for row in table("typical_sun").rows}
    assert names == again().keys() | SHIPPED.keys()


@pytest.mark.parametrize("name", again())
def test_every_month_is_as_printed_or_as_its_direct_and_diffuse_light_make_it(name):
    row = again()[name]
    expect_at(name, float(row["latitude_deg"]), float(row["altitude_m"]))
    for month, found in zip(MONTHS, ours(name), strict=True):
        other = float(row[f"m{month}"]) / 1000
        assert found == pytest.approx(other, rel=WITHIN[row["how"]], abs=0.0006), month


@pytest.mark.parametrize("name", SHIPPED)
def test_every_month_is_that_of_the_file_that_comes_with_pvlib(name):
    hours, place = SHIPPED[name]()
    light = hours["GHI" if "GHI" in hours else "ghi"]
    expect_at(name, place["latitude"], place["altitude"])
    sums = light.groupby(light.index.month).agg(lambda one: one.sum() / (len(one) / 24))
    for month, found in zip(MONTHS, ours(name), strict=True):
        assert found == pytest.approx(sums[month] / 1000, abs=0.0006), month
