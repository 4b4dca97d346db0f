"""A van whose runs are worked by hand: a bank, a block behind a main fuse, a pump."""

from calc.van.files import read_van
from calc.van.schedule import schedule

VAN = """
format = 1
none = ["shunt", "inverter", "alternator", "shore"]
[van]
system = "12 V"
[[batteries]]
name = "bank A"
chemistry = "LFP"
capacity = "100 Ah"
units = "2"
resistance = "20 mΩ"
fuse = "200 A"
fuse_family = "class T"
[[bars]]
name = "fuse block"
pole = "plus"
kind = "fuse-block"
rating = "100 A"
[[bars]]
name = "minus bar"
pole = "minus"
kind = "bus-bar"
rating = "100 A"
[[cables]]
name = "main plus"
from = "bank-a"
to = "fuse-block"
current = "60 A"
length = "1.2 m"
conductor = "2 AWG"
fuse = "100 A"
fuse_family = "class T"
[[cables]]
name = "main minus"
pole = "minus"
from = "bank-a"
to = "minus-bar"
current = "60 A"
length = "1 m"
conductor = "2 AWG"
[[circuits]]
name = "pump"
current = "20 A"
from = "fuse-block.1"
return_to = "minus-bar"
length = "3.2 m"
conductor = "14 AWG"
fuse = "25 A"
fuse_family = "type C"
"""


def of(text: str, name: str = "pump"):
    van = read_van(text)
    row = schedule(van).of(van.by_id(name))
    assert row is not None
    return row


# NEC chapter 9 table 8, uncoated stranded copper at 75 °C [ohm per 1000 ft], taken to 60 °C by
# copper's zero resistance at −234.5 °C: 14 AWG 3.14, 2 AWG 0.194.
WARM = (234.5 + 60) / (234.5 + 75) / 304.8
OHMS_14, OHMS_2 = 3.14 * WARM, 0.194 * WARM

# Full LFP rests at 3.3481 V a cell by the table of rested voltages
REST = 4 * 3.3481
# Solid annealed copper, 1/58 ohm mm²/m at 20 °C; areas by the definition of the gauge
AREA_2 = 3.14159265 / 4 * (0.127 * 92 ** (34 / 39)) ** 2
JOINTS = 4 * 0.1e-3  # of each loop, as the worksheet of shorts has them
