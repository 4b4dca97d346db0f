"""What must hold of every bank, load and joint, whichever figures are typed."""

import math

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from tests.properties.inputs import SLACK, inputs_of, tried, valid, worked

BANK = calc.find("runtime")
LOAD = calc.find("watts-to-amps")
JOINT = calc.find("joint-torque")
FACTORS = st.floats(1, 20)


def times(field, value, factor, unit):
    """Return a text `factor` times `value`, kept within the limits of `field`."""
    high = field.bounds(field.kinds[0])[1]
    return f"{min(value * factor, high)!r} {unit}"


@given(st.data(), FACTORS)
@tried(150)
def test_more_capacity_never_lasts_shorter(data, factor):
    texts = data.draw(inputs_of(BANK))
    first = worked("runtime", texts)
    assume(first is not None)
    more = min(first.values["capacity"] / 3600 * factor, 20000)
    second = BANK.work({**texts, "capacity": f"{more!r} Ah"})
    for name in ("runtime", "shortest", "longest", "usable_charge"):
        assert second.values[name] >= first.values[name] / SLACK


@given(st.data(), FACTORS, st.sampled_from(["W", "A"]))
@tried(150)
def test_a_larger_load_never_lasts_longer(data, factor, unit):
    texts = data.draw(inputs_of(BANK))
    texts["load"] = f"{data.draw(st.floats(0.1, 1000))!r} {unit}"
    first = worked("runtime", texts)
    assume(first is not None)
    second = worked("runtime", {**texts, "load": f"{first.values['load'] * factor!r} {unit}"})
    assume(second is not None)
    for name in ("runtime", "shortest", "longest"):
        assert second.values[name] <= first.values[name] * SLACK
    assert second.values["current"] >= first.values["current"] / SLACK


@given(st.data())
@tried(150)
def test_colder_never_lasts_longer_and_less_use_never_longer(data):
    texts = data.draw(inputs_of(BANK))
    pairs = {}
    for field in ("temperature", "usable"):
        drawn = [data.draw(valid(BANK.field(field))) for _ in range(2)]
        pairs[field] = sorted(drawn, key=lambda text, f=field: BANK.field(f).read(text).value)
    for field, (low, high) in pairs.items():
        both = [worked("runtime", {**texts, field: text}) for text in (low, high)]
        if None not in both:
            assert both[0].values["runtime"] <= both[1].values["runtime"] * SLACK


@given(
    st.floats(1, 20000), st.floats(0.5, 120), st.floats(1, 2), st.floats(0.01, 1),
    st.sampled_from(["LFP", "AGM", "gel", "flooded"]), st.floats(25, 60),
)  # fmt: skip
@tried(200)
def test_at_the_rated_current_the_time_is_the_rated_hours_for_any_exponent(
    capacity, hours, exponent, usable, chemistry, temperature
):
    current = capacity / hours
    assume(0.001 <= current <= 2000)
    texts = {
        "capacity": f"{capacity!r} Ah", "rated_hours": f"{hours!r} h", "load": f"{current!r} A",
        "exponent": repr(exponent), "usable": f"{usable * 100!r} %", "chemistry": chemistry,
        "temperature": f"{temperature!r} C",
    }  # fmt: skip
    answer = calc.work("runtime", texts)
    assert math.isclose(answer["runtime"].m_as("hour"), hours * usable, rel_tol=1e-9)
    assert math.isclose(answer["usable_charge"].m_as("A*hour"), capacity * usable, rel_tol=1e-9)


@given(st.data())
@tried(150)
def test_the_spread_holds_the_answer(data):
    answer = worked("runtime", data.draw(inputs_of(BANK)))
    assume(answer is not None)
    v = answer.values
    assert 0 < v["shortest"] <= v["longest"] * SLACK
    assert v["usable_charge"] > 0
    if v["exponent_low"] <= v["exponent"] <= v["exponent_high"]:
        assert v["shortest"] <= v["runtime"] * SLACK and v["runtime"] <= v["longest"] * SLACK


@given(st.data())
@tried(150)
def test_the_spread_does_not_hang_on_the_exponent_that_is_given(data):
    """Its ends are the times of the lowest and highest published exponent, given as one's own."""
    texts = data.draw(inputs_of(BANK))
    answer = worked("runtime", texts)
    assume(answer is not None)
    v = answer.values
    ends = sorted(
        BANK.work({**texts, "exponent": repr(v[name])}).values["runtime"]
        for name in ("exponent_low", "exponent_high")
    )
    for name, end in zip(("shortest", "longest"), ends, strict=True):
        assert math.isclose(v[name], end, rel_tol=1e-9)


@given(st.data())
@tried(150)
def test_a_load_that_is_hard_on_a_bank_is_never_fine(data):
    """Half, a quarter and a fifth of the ampere-hours in amperes: common practice."""
    answer = worked("runtime", data.draw(inputs_of(BANK)))
    assume(answer is not None)
    v = answer.values
    rate = {"LFP": 0.5, "AGM": 0.25}.get(v["chemistry"], 0.2)
    if v["current"] > rate * v["capacity"] / 3600 * SLACK:
        assert answer.verdict != "fine"


@given(st.data())
@tried(150)
def test_energy_in_is_energy_out_and_losses(data):
    """Volts, amps and hours at the bank against watts and hours at the load, by two ways."""
    v = LOAD.work(data.draw(inputs_of(LOAD))).values
    at_bank = v["voltage"] * v["charge"]
    at_load = v["power"] * v["hours"]
    lost = at_bank * (1 - (v["efficiency"] if v["route"] == "inverter" else 1))
    assert math.isclose(at_bank, at_load + lost, rel_tol=1e-9, abs_tol=1e-9)
    assert math.isclose(at_bank, v["energy"], rel_tol=1e-9, abs_tol=1e-9)


@given(st.data(), FACTORS)
@tried(100)
def test_current_goes_with_power_and_against_voltage(data, factor):
    texts = data.draw(inputs_of(LOAD))
    texts |= {"power": "100 W", "voltage": "120 V"}
    base = LOAD.work(texts).values["current"]
    more = LOAD.work({**texts, "power": f"{100 * factor!r} W"}).values["current"]
    lower = LOAD.work({**texts, "voltage": f"{120 / factor!r} V"}).values["current"]
    assert math.isclose(more, base * factor, rel_tol=1e-9)
    assert math.isclose(lower, base * factor, rel_tol=1e-9)


@given(st.data(), st.floats(0.1, 15), FACTORS)
@tried(150)
def test_torque_scales_clamping_force_and_leaves_the_ceiling(data, torque, factor):
    texts = data.draw(inputs_of(JOINT))
    first = JOINT.work({**texts, "maker_torque": f"{torque!r} N.m"}).values
    second = JOINT.work({**texts, "maker_torque": f"{torque * factor!r} N.m"}).values
    for name in ("preload", "preload_low", "preload_high", "torque"):
        assert math.isclose(second[name], first[name] * factor, rel_tol=1e-9)
    for name in ("ceiling", "torque_low", "torque_high", "preload_limit"):
        assert second[name] == first[name]


@given(st.data())
@tried(100)
def test_the_ceiling_is_the_torque_of_the_most_clamping_force(data):
    texts = data.draw(inputs_of(JOINT))
    ceiling = JOINT.work(texts).values["ceiling"]
    assume(0.1 <= ceiling <= 300)
    at_most = JOINT.work({**texts, "maker_torque": f"{ceiling!r} N.m"})
    v = at_most.values
    # The ceiling is by the usual steel factor, the clamping force by that of the thread at hand.
    by_ceiling = v["preload"] * v["grip"] / v["factor"]
    assert math.isclose(by_ceiling, v["preload_limit"], rel_tol=1e-9)
    assert v["preload"] <= v["preload_limit"] * SLACK
    if v["lugs"] > 4:
        assert at_most.verdict == "stop"
    else:
        assert at_most.verdict == "caution" or v["condition"] == "dry"
        assert at_most.verdict != "stop"


@given(st.data(), st.floats(0.1, 300))
@tried(150)
def test_a_maker_s_torque_is_fine_only_where_nothing_speaks_against_it(data, torque):
    texts = data.draw(inputs_of(JOINT, condition="dry"))
    answer = JOINT.work({**texts, "maker_torque": f"{torque!r} N.m"})
    v = answer.values
    over = torque > v["ceiling"] * SLACK
    low, high = v["torque_low"], v["torque_high"]
    if low == high:
        low, high = low / 2, high * 2
    soft = v["joint"] in ("battery-terminal", "fuse-holder-or-breaker")
    above = torque > high * SLACK and (soft or v["grade"] == "unknown")
    outside = torque < low / SLACK or above
    best = JOINT.work({**texts, "maker_torque": f"{torque!r} N.m", "grade": "10.9"})
    over_any = torque > best.values["ceiling"] * SLACK
    if v["lugs"] > 4 or over_any or (over and v["grade"] != "unknown"):
        assert answer.verdict == "stop"
    elif over or outside or v["preload_high"] > v["proof"] * SLACK:
        assert answer.verdict == "caution"
    else:
        assert answer.verdict == "fine"
    assert (
        JOINT.work({**texts, "maker_torque": f"{torque!r} N.m", "condition": "lubricated"}).verdict
        != "fine"
    )
