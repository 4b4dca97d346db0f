"""What is cut and bought for a small van, counted by hand."""

import pytest

from calc.van.files import read_van
from calc.van.fuse_list import Fuse
from calc.van.materials import bill
from calc.van.stock import cut_length, cut_list, end_text, length_text, pieces
from tests.counts import chance, often
from tests.van_samples import drawn_van

FILE = """
format = 1
[van]
name = "Whimbrel"
system = "12 V"
[[batteries]]
name = "house bank"
chemistry = "LFP"
capacity = "100 Ah"
units = "2"
series = "2"
[[bars]]
name = "fuse block"
pole = "plus"
kind = "fuse-block"
rating = "100 A"
studs = "6"
[[bars]]
name = "minus bar"
pole = "minus"
kind = "bus-bar"
rating = "250 A"
[[cables]]
name = "main plus"
pole = "plus"
from = "house-bank"
to = "fuse-block"
length = "1.2 m"
parallel = "2"
conductor = "2 AWG"
[[cables]]
name = "main minus"
pole = "minus"
from = "house-bank"
to = "minus-bar"
length = "4 ft"
conductor = "2 AWG"
[[circuits]]
name = "fridge"
from = "fuse-block.1"
return_to = "minus-bar"
length = "3.2 m"
conductor = "12 AWG"
[[circuits]]
name = "pump"
from = "fuse-block.2"
return_by = "chassis"
bond_point = "floor stud"
length = "2 m"
conductor = "12 AWG"
[[circuits]]
name = "lights"
from = "fuse-block.3"
return_to = "minus-bar"
length = "4 m"
[[circuits]]
name = "fan"
from = "fuse-block.4"
return_to = "minus-bar"
conductor = "1.5 mm2"
insulation = "90 C"
[[joints]]
name = "post"
stud = "M8"
lugs = "2"
[[joints]]
name = "bar"
stud = "M8"
[[joints]]
name = "bond"
[[alarms]]
kind = "smoke"
place = "ceiling"
[[alarms]]
kind = "smoke"
place = "rear"
[[alarms]]
kind = "co"
"""
VAN = read_van(FILE)
CHOSEN = {"lights": "14 AWG"}
CUT = pieces(VAN, CHOSEN)


@pytest.mark.parametrize(
    ("run", "cut"),
    [
        (3.2, 3.55),  # 3.52 with a tenth more
        (1.2, 1.35),  # a tenth is 0.12: the least is 0.15
        (1.5, 1.65),  # both are 0.15
        (4.0, 4.4),  # a tenth is a whole number of steps: no further one
        (0.1, 0.25),
        (10.0, 11.0),
    ],
)
def test_a_piece_is_a_tenth_longer_than_its_run_and_fifteen_centimetres_at_least(run, cut):
    assert cut_length(run) == pytest.approx(cut)


def test_a_longer_run_is_never_cut_shorter_and_always_long_enough():
    draw = chance("cut")
    lengths = sorted(draw.uniform(0.01, 60) for _ in range(often(300, 3000)))
    cut = [cut_length(one) for one in lengths]
    assert cut == sorted(cut)
    for run, piece in zip(lengths, cut, strict=True):
        extra = max(run / 10, 0.15)
        assert run + extra - 1e-6 <= piece <= run + extra + 0.05 + 1e-6


@pytest.mark.parametrize(
    ("metres", "text"),
    [
        (3.55, "3.55 m (11 ft 8 in)"),  # 139.8 in
        (0.25, "0.25 m (10 in)"),  # 9.84 in
        (0.9144, "0.91 m (3 ft)"),
        (0.0, "0.00 m (0 in)"),
        (2.7, "2.70 m (8 ft 11 in)"),  # 106.3 in
    ],
)
def test_a_length_is_told_in_feet_and_inches_too_never_short(metres, text):
    assert length_text(metres).replace("\u00a0", " ") == text


def rows(table):
    return [tuple(cell.replace("\u00a0", " ") for cell in row) for row in table.rows]


def test_the_cut_list_is_the_one_that_a_hand_would_write():
    """Main plus twice 1.35 m; main minus 4 ft = 1.2192 m, 1.3692, so 1.40 m: 4.10 m of 2 AWG.

    12 AWG: fridge 3.55 m twice, pump 2.2 m and its return to the metal: 9.30 m.
    """
    found = rows(cut_list(VAN, CUT))
    assert found == [
        ("W101+", "2 AWG", "105 °C", "house bank +", "fuse block", "1.35 m (4 ft 6 in)", "2", ""),
        ("W102−", "2 AWG", "105 °C", "house bank −", "minus bar", "1.40 m (4 ft 8 in)", "1", ""),
        ("Total", "2 AWG", "105 °C", "", "", "4.10 m (13 ft 6 in)", "3", ""),
        ("W1+", "12 AWG", "105 °C", "fuse block 1", "fridge +", "3.55 m (11 ft 8 in)", "1", ""),
        ("W1−", "12 AWG", "105 °C", "minus bar", "fridge −", "3.55 m (11 ft 8 in)", "1", ""),
        ("W2+", "12 AWG", "105 °C", "fuse block 2", "pump +", "2.20 m (7 ft 3 in)", "1", ""),
        ("W2−", "12 AWG", "105 °C", "chassis", "pump −", "measure it", "1",
         "to the metal at floor stud"),
        ("Total", "12 AWG", "105 °C", "", "", "9.30 m (30 ft 7 in) and 1 to be measured", "4",
         ""),
        ("W3+", "14 AWG", "105 °C", "fuse block 3", "lights +", "4.40 m (14 ft 6 in)", "1",
         "size chosen by the schedule"),
        ("W3−", "14 AWG", "105 °C", "minus bar", "lights −", "4.40 m (14 ft 6 in)", "1",
         "size chosen by the schedule"),
        ("Total", "14 AWG", "105 °C", "", "", "8.80 m (28 ft 11 in)", "2", ""),
        ("W4+", "1.5 mm²", "90 °C", "fuse block 4", "fan +", "measure it", "1", ""),
        ("W4−", "1.5 mm²", "90 °C", "minus bar", "fan −", "measure it", "1", ""),
        ("Total", "1.5 mm²", "90 °C", "", "", "2 to be measured", "2", ""),
    ]  # fmt: skip
    assert cut_list(VAN, CUT).sums == {2, 7, 10, 13}


def test_without_a_choice_a_size_that_is_not_known_is_said_to_be_so():
    found = rows(cut_list(VAN, pieces(VAN, {})))
    assert [row[1] for row in found if row[0] in ("W3+", "W3−")] == ["not known"] * 2
    assert found[-1][0] == "Total" and found[-1][1] == "not known", "what is not known comes last"


def test_a_chosen_size_never_replaces_one_that_is_stated():
    found = pieces(VAN, {"fridge": "2 AWG"})
    assert {one.size.conductor for one in found if one.conductor.part.id == "fridge"} == {"12 AWG"}


def fuse(mark: str, rating: str, count: int = 1) -> Fuse:
    part = VAN.one("circuits")
    return Fuse(mark=mark, part=part, rating=rating, family="blade", interrupts="", protects="",
                count=count)  # fmt: skip


def test_the_bill_of_materials_counts_what_a_hand_would_count():
    """Batteries 2 in parallel times 2 in series. Ends: 2 AWG 3 conductors, 12 AWG 4, and so on."""
    fuses = (
        fuse("F1", "10 A"), fuse("F2", "10 A"), fuse("F3", "5 A"), fuse("F201", "100 A", count=2),
        fuse("F4", ""),
    )  # fmt: skip
    found = {(row[0], row[1]): row[2] for row in rows(bill(VAN, CUT, fuses))}
    assert found == {
        ("Battery", "LFP (lithium iron phosphate), 100 Ah"): "4",
        ("Fuse block, plus", "100 A, 6 studs or ways"): "1",
        ("Bus bar, minus", "250 A"): "1",
        ("Smoke alarm", ""): "2",
        ("Carbon monoxide alarm", ""): "1",
        ("Fuse", "blade, 10 A"): "2 + 1 spare",
        ("Fuse", "blade, 5 A"): "1 + 1 spare",
        ("Fuse", "blade, 100 A"): "2 + 1 spare",
        ("Cable, stranded copper", "2 AWG, 105 °C"): "4.10 m (13 ft 6 in)",
        ("Cable, stranded copper", "12 AWG, 105 °C"):
            "9.30 m (30 ft 7 in) and 1 to be measured",
        ("Cable, stranded copper", "14 AWG, 105 °C"): "8.80 m (28 ft 11 in)",
        ("Cable, stranded copper", "1.5 mm², 90 °C"): "2 to be measured",
        ("Lugs or ferrules, crimped", "for 2 AWG"): "6",
        ("Lugs or ferrules, crimped", "for 12 AWG"): "8",
        ("Lugs or ferrules, crimped", "for 14 AWG"): "4",
        ("Lugs or ferrules, crimped", "for 1.5 mm²"): "4",
        ("Ring lugs, among them", "for a stud M8"): "3",
        ("Ring lugs, among them", "stud not known"): "1",
        ("Wire markers", ""): "22",
    }  # fmt: skip


def test_a_terminal_is_told_in_words():
    assert end_text(VAN, "fuse-block.3") == "fuse block 3"
    assert end_text(VAN, "fridge.minus") == "fridge −"
    assert end_text(VAN, "converter.out-plus") == "converter out +"
    assert end_text(VAN, "") == "not said"


def test_every_conductor_of_a_drawn_van_is_on_the_list_once():
    draw = chance("stock")
    for _ in range(often(40, 2000)):
        van = drawn_van(draw)
        table = cut_list(van, pieces(van, {}))
        own = [row for place, row in enumerate(table.rows) if place not in table.sums]
        assert len(own) == len(van.net.conductors)
        assert all(len(row) == len(table.columns) for row in table.rows)
        bill(van, pieces(van, {}), ())
