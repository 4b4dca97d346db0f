"""The same bank gets the same judgement in every sheet that asks about one.

Banks are drawn and worked through all of them; `build_scripts/soak` draws a thousand and more. What
is expected stands here by itself, as common practice has it: half, a quarter and a fifth of the
ampere-hours in amperes, 0 °C for LFP, 80 and 50 % used, 12.8 and 12.2 V.
"""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.units.compare import at_most
from tests.properties.inputs import tried

HEAVY = {"LFP": 0.5, "AGM": 0.25, "gel": 0.2, "flooded": 0.2}  # amperes for each ampere-hour
LEAST_REST = {"LFP": 10.0, "AGM": 11.4, "gel": 11.4, "flooded": 11.4}  # V of 12
ORDER = ("fine", "caution", "stop")

CHEMISTRIES = st.sampled_from(sorted(HEAVY))
CAPACITIES = st.floats(20, 800)
TEMPERATURES = st.one_of(
    st.floats(-25, 50).map(lambda c: round(c, 2)),
    st.sampled_from([-20.0, -4.0, -0.1, 0.0, 9.9, 10.0]),
)
STATES = st.floats(5, 100)
# Of what is hard on such a bank
LOADS = st.one_of(st.floats(0.1, 4), st.floats(0.95, 1.05))
CUT_OFFS = st.sampled_from(["not proven", "proven"])


def ask(sheet, **texts):
    """Return the first stage of an answer: what is tried for a week takes long."""
    found = calc.find(sheet)
    readings, problems = found.read({name: str(text) for name, text in texts.items()})
    assert not problems, problems
    return next(found.stages(readings))[1]


def volts(chemistry):
    return 12.8 if chemistry == "LFP" else 12.2


def drawn_from(chemistry, capacity, amps, **others):
    """Return what each sheet says of a load of `amps` on a bank of `capacity` Ah."""
    bank = {"chemistry": chemistry, "capacity": f"{capacity!r} Ah"}
    watts = f"{amps * volts(chemistry)!r} W"
    asked = {
        "runtime": {**bank, "load": f"{amps!r} A"},
        "watts-to-amps": {**bank, "power": watts},
        "bank-gauge": {**bank, "current": f"{-amps!r} A"},
        "bank-size": {
            "chemistry": chemistry,
            "unit_capacity": f"{capacity!r} Ah",
            "daily_energy": "1 Wh",
            "days": "1 h",
            "heaviest": watts,
        },
        "inverter-size": {
            **bank,
            "running": f"{amps * 11 * 0.9!r} W",
            "surge": "1 W",
            "lowest_voltage": "11 V",
            "efficiency": "90 %",
        },
        "week-ahead": {**bank, "loads": f"load:{watts}:0.05 h", "array": "0 W", "drive_hours": "0"},
    }
    if amps <= 50:
        asked["standby-drain"] = {**bank, "drain": f"{amps!r} A", "management": "0 A"}
    for sheet, texts in asked.items():
        known = {field.id for field in calc.find(sheet).fields}
        texts.update({name: text for name, text in others.items() if name in known})
    return {sheet: ask(sheet, **texts) for sheet, texts in asked.items()}


def charged(chemistry, capacity, **others):
    """Return what each sheet says of a bank that something charges."""
    bank = {"chemistry": chemistry, "capacity": f"{capacity!r} Ah"}
    state = others.pop("state", "50 %")
    both = {**bank, **others}
    return {
        "shore-charge": ask("shore-charge", **both, from_state=state, to_state="100 %"),
        "alternator-charge": ask("alternator-charge", **both, from_state=state),
        "week-ahead": ask("week-ahead", **both, loads="lamp:1 W:1 h", array="100 W"),
        "sun-yield": ask("sun-yield", chemistry=chemistry, **others),
    }


TOO_HARD = {"bank.heavy-load", "bank.beyond-any-such-bank", "draw.ends-sooner"}


@given(CHEMISTRIES, CAPACITIES, LOADS)
@tried(13)
def test_a_load_is_hard_on_a_bank_from_one_limit_on(chemistry, capacity, share):
    limit = HEAVY[chemistry] * capacity
    assume(abs(share - 1) > 1e-6 and share * limit * 13 < 20000)
    for sheet, answer in drawn_from(chemistry, capacity, share * limit).items():
        hard = TOO_HARD & set(answer.rules)
        assert bool(hard) is (share > 1), sheet
        stops = "bank.beyond-any-such-bank" in answer.rules
        assert stops is (share * HEAVY[chemistry] > (2 if chemistry == "LFP" else 1)), sheet
        assert share <= 1 or answer.verdict != "fine", sheet


@given(CHEMISTRIES, CAPACITIES, TEMPERATURES, CUT_OFFS)
@tried(13)
def test_one_temperature_stops_every_charge(chemistry, capacity, celsius, cut_off):
    others = {"temperature": f"{celsius!r} C", "cold_cut_off": cut_off}
    said = {}
    for sheet, answer in charged(chemistry, capacity, state="90 %", **others).items():
        said[sheet] = {
            rule for rule in answer.rules if rule.startswith("charge.") and rule in OF_TEMPERATURE
        }
        frozen = chemistry == "LFP" and celsius < 0
        assert ("charge.in-frost" in said[sheet]) is (frozen and cut_off == "not proven"), sheet
        assert ("charge.held-by-cold-cut-off" in said[sheet]) is (frozen and cut_off == "proven")
        if said[sheet] & {"charge.in-frost", "charge.outside-temperature"}:
            assert answer.verdict == "stop", sheet
        elif said[sheet]:
            assert answer.verdict != "fine", sheet
    assert len({frozenset(rules) for rules in said.values()}) == 1, said


OF_TEMPERATURE = {
    "charge.in-frost",
    "charge.held-by-cold-cut-off",
    "charge.outside-temperature",
    "charge.near-frost",
    "charge.off-room",
}


@given(CHEMISTRIES, CAPACITIES, TEMPERATURES)
@tried(13)
def test_cold_and_frost_are_judged_alike_while_it_gives(chemistry, capacity, celsius):
    answers = drawn_from(chemistry, capacity, capacity / 50, temperature=f"{celsius!r} C")
    asked = ("runtime", "bank-size", "bank-gauge", "week-ahead")
    for sheet in asked:
        beyond = chemistry != "LFP" and celsius < -35 / 9 - 1e-9  # 25 °F, where IEEE 485 ends
        assert ("bank.cold-beyond-table" in answers[sheet].rules) is beyond, sheet
        assert not beyond or answers[sheet].verdict != "fine", sheet
        if chemistry != "LFP":
            factors = {name: answers[name].values["cold_factor"] for name in asked}
            assert len(set(factors.values())) == 1, factors
    for sheet in ("runtime", "bank-size", "bank-gauge", "standby-drain", "week-ahead"):
        frosty = chemistry == "LFP" and celsius < 0
        assert ("bank.in-frost" in answers[sheet].rules) is frosty, sheet
        hot = celsius > (45 if chemistry == "LFP" else 50)
        assert ("bank.too-hot" in answers[sheet].rules) is hot, sheet


@given(CHEMISTRIES, CAPACITIES, TEMPERATURES, STATES)
@tried(13)
def test_the_acid_of_a_bank_freezes_at_one_temperature(chemistry, capacity, celsius, state):
    others = {"temperature": f"{celsius!r} C", "state": f"{state!r} %"}
    answers = charged(chemistry, capacity, **others) if state < 100 else {}
    answers = {name: answers[name] for name in answers if name not in ("week-ahead", "sun-yield")}
    for current in ("1 A", "-1 A", "0 A"):
        answers[current] = ask(
            "bank-gauge",
            chemistry=chemistry,
            capacity=f"{capacity!r} Ah",
            current=current,
            **others,
        )
    assert len({"bank.acid-may-freeze" in answer.rules for answer in answers.values()}) == 1


@given(CHEMISTRIES)
@tried(4)
def test_share_used_and_voltage_follow_the_chemistry_everywhere(chemistry):
    share, voltage = (0.8 if chemistry == "LFP" else 0.5), volts(chemistry)
    for name in calc.worksheets():
        sheet = calc.find(name)
        ids = {field.id for field in sheet.fields}
        if "chemistry" not in ids or name in ("fault-current", "find-fault"):
            continue
        values = ask(name, chemistry=chemistry).values
        if "usable" in ids:
            assert values["usable"] == pytest.approx(share), name
        if name == "standby-drain":
            assert values["to_state"] == pytest.approx(1 - share)
        # Two ask the voltage on charge, and the water heater that of its element, mains perhaps.
        if "voltage" in ids and name not in ("shore-charge", "sun-yield", "water-heater"):
            assert values["voltage"] == pytest.approx(voltage), name


@given(CHEMISTRIES, st.floats(5, 100))
@tried(13)
def test_a_share_that_is_too_much_is_so_everywhere(chemistry, percent):
    answers = drawn_from(chemistry, 200.0, 1.0, usable=f"{percent!r} %")
    deep = {"bank.deeper-than-half", "bank.nothing-kept-back"}
    too_much = not at_most(percent / 100, 0.9 if chemistry == "LFP" else 0.5)
    for sheet in ("runtime", "bank-size", "bank-gauge"):
        assert bool(deep & set(answers[sheet].rules)) is too_much, sheet


@given(CHEMISTRIES, st.floats(9, 13.2))
@tried(13)
def test_a_bank_that_rests_too_low_is_charged_by_no_sheet(chemistry, rested):
    assume(abs(rested - LEAST_REST[chemistry]) > 1e-6)
    found = {
        "bank-gauge": ask(
            "bank-gauge",
            chemistry=chemistry,
            reading=f"{rested!r} V",
            taken="at rest",
            rested_for="48 h",
            current="0 A",
            state="50 %",
        )
    }
    for sheet in ("shore-charge", "alternator-charge"):
        found[sheet] = ask(
            sheet, chemistry=chemistry, rested_voltage=f"{rested!r} V", from_state="50 %"
        )
    said = set()
    for sheet, answer in found.items():
        assert ("bank.past-empty" in answer.rules) is (rested < LEAST_REST[chemistry]), sheet
        assert rested >= LEAST_REST[chemistry] or answer.verdict == "stop", sheet
        said.add(frozenset(rule for rule in answer.rules if rule.startswith("bank.stated-")))
    assert len(said) == 1


WORSE = {
    ("runtime", "load"): ("A", 0.1, 400, +1),
    ("runtime", "needed"): ("h", 0.1, 100, +1),
    ("runtime", "usable"): ("%", 5, 100, +1),
    ("runtime", "temperature"): ("C", -25, 35, -1),
    ("bank-gauge", "state"): ("%", 0, 100, -1),
    ("bank-gauge", "since_full"): ("days", 0, 200, +1),
    ("bank-gauge", "temperature"): ("C", -25, 35, -1),
    ("bank-size", "heaviest"): ("W", 10, 20000, +1),
    ("standby-drain", "away"): ("days", 0.1, 900, +1),
    ("standby-drain", "drain"): ("A", 0, 20, +1),
    ("standby-drain", "from_state"): ("%", 60, 100, -1),
    ("week-ahead", "temperature"): ("C", -25, 35, -1),
    ("shore-charge", "temperature"): ("C", -25, 35, -1),
    ("sun-yield", "temperature"): ("C", -25, 35, -1),
    ("watts-to-amps", "hours"): ("h", 0.1, 100, +1),
}


@pytest.mark.parametrize(("sheet", "field"), WORSE)
@given(CHEMISTRIES, CAPACITIES, st.floats(0, 1), st.floats(0, 1))
@tried(8)
def test_more_load_longer_colder_and_less_charge_never_get_a_better_verdict(
    sheet, field, chemistry, capacity, one, other
):
    """Cold lead-acid gives less the colder it is, and LFP is charged less and then not at all."""
    unit, low, high, way = WORSE[sheet, field]
    assume((sheet, field) != ("runtime", "temperature") or chemistry != "LFP")
    asked = {"chemistry": chemistry}
    if sheet not in ("bank-size", "sun-yield"):
        asked["capacity"] = f"{capacity!r} Ah"
    if sheet == "watts-to-amps":
        asked["power"] = "60 W"
    if (sheet, field) == ("standby-drain", "away"):
        asked["drain"] = "20 mA"
    elif sheet == "standby-drain":
        asked["away"] = "60 days"
    if sheet == "week-ahead":
        asked |= {"loads": "lamp:4 W:6 h", "array": "200 W", "sky": "60 %"}
    values = sorted((low + share * (high - low) for share in (one, other)), reverse=way < 0)
    found = [ask(sheet, **asked, **{field: f"{value!r} {unit}"}) for value in values]
    better, worse = (ORDER.index(answer.verdict) for answer in found)
    assert worse >= better, [
        (value, str(answer.rule)) for value, answer in zip(values, found, strict=True)
    ]
