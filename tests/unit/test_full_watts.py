"""A load is on at full watts or off: the hours against a clock's minutes, over a fortnight."""

import pytest

from calc.energy.balance import HOURS, Level, course, parted
from calc.energy.daily_loads import Load, running
from calc.energy.sun import Month
from calc.energy.week import WeekInputs
from tests.unit.van_by_minutes import DAY, clock, fortnight, thermostat

HOUR = 3600.0
FIGURES = {
    "AGM": {
        "coulombic": 0.85,
        "taper_hours": 1.25,
        "most_per_hour": 0.25,
        "exponent": 1.10,
        "monthly_loss": 0.04,
    },
    "LFP": {
        "coulombic": 0.99,
        "taper_hours": 0.1,
        "most_per_hour": 0.5,
        "exponent": 1.0,
        "monthly_loss": 0.03,
    },
}
ENERGY = {"AGM": 0.70, "LFP": 0.92}
MORNING, EVENING, MIDDAY = 7 * 60, 18 * 60, 12 * 60


def van(chemistry, amp_hours, loads, **more):
    """Return the plan of a van in June at 52 degrees north."""
    figures = {
        "capacity": amp_hours * HOUR,
        "chemistry": chemistry,
        "from_state": 1.0,
        "usable": 0.5 if chemistry == "AGM" else 0.8,
        "voltage": 12.2 if chemistry == "AGM" else 12.8,
        "temperature": 25.0,
        "loads": tuple(loads),
        "efficiency": 0.88,
        "idle": 15.0,
        "always": False,
        "array": 600.0,
        "latitude": 52.0,
        "month": "June",
        "sky": 0.6,
        "losses": 0.14,
        "tilt": 0.0,
        "facing": 180.0,
        "turbidity": 3.0,
        "altitude": 100.0,
        "drive_hours": 0.0,
        "charger": 0.0,
        "shore_every": 0,
        "lead": 0.0,
        "lead_hours": 0.0,
    }
    return WeekInputs(**{**figures, **more, "month": Month(more.get("month", "June"))})


HOB = Load("hob", 1800.0, 0.4 * HOUR, "morning-and-evening", True)
FRIDGE = Load("fridge", 45.0, 9.6 * HOUR, "all", False)
LIGHTS = Load("lights", 24.0, 4 * HOUR, "evening", False)
LAPTOP = Load("laptop", 60.0, 3 * HOUR, "midday", True)
ROUTER = Load("router", 8.0, 24 * HOUR, "all", False)
KETTLE = Load("kettle", 1500.0, 0.25 * HOUR, "morning", True)
BY_CLOCK = {
    "hob": (1800.0, True, clock(starts=(MORNING, EVENING), minutes=12)),
    "fridge": (45.0, False, thermostat(share=0.4, every=40)),
    "lights": (24.0, False, clock(starts=(EVENING,), minutes=240)),
    "laptop": (60.0, True, clock(starts=(MIDDAY,), minutes=180)),
    "router": (8.0, False, [True] * DAY),
    "kettle": (1500.0, True, clock(starts=(MORNING,), minutes=15)),
}
ALL = (HOB, FRIDGE, LIGHTS, LAPTOP, ROUTER)
VANS = {
    "hob on lead-acid in June": van("AGM", 300, ALL),
    "hob on a small lithium bank": van("LFP", 100, ALL, array=400.0),
    "hob and kettle under a grey sky": van("LFP", 200, (*ALL, KETTLE), sky=0.25),
    "lead-acid in October": van("AGM", 400, ALL, month="October"),
    "kettle, weak sun on lead-acid": van("AGM", 200, (KETTLE, FRIDGE), sky=0.3),
}


@pytest.mark.parametrize("name", VANS)
def test_the_hours_agree_with_the_minutes_over_a_fortnight(name):
    """Within 2 points of state of charge at every hour's end of the 14 days."""
    plan = VANS[name]
    catch = plan.array / 1000 * (1 - plan.losses)
    minutes = fortnight(
        amp_hours=plan.capacity / HOUR,
        volts=plan.voltage,
        charge_volts=plan.voltage * FIGURES[plan.chemistry]["coulombic"] / ENERGY[plan.chemistry],
        floor=1 - plan.usable,
        sun_watts=[catch * light / HOUR for light in plan.usual.hours],
        loads=[BY_CLOCK[load.name] for load in plan.loads],
        idle=plan.idle,
        efficiency=plan.efficiency,
        **FIGURES[plan.chemistry],
    )
    ours = course(plan.bank, plan.day, state=1.0, days=14, every=0).states[1:]
    ends = minutes[59::60]
    assert len(ours) == len(ends) == 14 * HOURS
    worst = max(abs(one - other) for one, other in zip(ours, ends, strict=True))
    assert worst < 0.02


def test_a_hob_reaches_the_bank_though_the_sun_makes_more_than_its_mean():
    """1800 W for 12 minutes twice a day: at noon of June 600 W of panels could feed its mean."""
    plan = van("AGM", 300, (HOB,))
    seven = plan.week.hours[7]
    from_bank = (1800 / 0.88 + 15) * 0.2 * HOUR - plan.day.sun[7] * 0.2
    assert seven.drawn >= from_bank * 0.999
    assert plan.week.hours[24 + 18].drawn > 0.8 * (1800 / 0.88) * 0.2 * HOUR


def test_energy_is_what_it_was_when_it_was_spread():
    for load in (*ALL, KETTLE):
        plan = van("LFP", 200, (load,))
        assert sum(plan.day.useful) == pytest.approx(load.watts * load.hours)


@pytest.mark.parametrize(
    ("when", "hours", "on"),
    [
        ("morning", 1.5, {7: 1, 8: 0.5}),
        ("midday", 2, {12: 1, 13: 1}),
        ("evening", 7, {18: 1, 19: 1, 20: 1, 21: 1, 22: 1, 23: 1, 0: 1}),
        ("morning-and-evening", 0.4, {7: 0.2, 18: 0.2}),
    ],
)
def test_a_time_of_day_is_one_run_from_that_hour_on(when, hours, on):
    shares = running(Load("a", 10.0, hours * HOUR, when, False), (1.0,) * 24)
    assert {at: share for at, share in enumerate(shares) if share} == pytest.approx(on)


def test_the_longest_morning_and_evening_still_fit_a_day():
    shares = running(Load("a", 10.0, 24 * HOUR, "morning-and-evening", False), (1.0,) * 24)
    assert shares == pytest.approx([1.0] * 24)


def test_an_hour_is_parted_where_the_demand_crosses_what_is_offered():
    levels = (Level(600.0, 1000.0, 1.2), Level(1200.0, 300.0, 1.0), Level(1800.0, 50.0, 1.0))
    short, over = parted(levels, 200.0 * HOUR)
    assert (short.time, over.time) == (1800.0, 1800.0)
    missing = 800 * 600 + 100 * 1200
    assert short.demand - short.offered == pytest.approx(missing)
    assert short.factor == pytest.approx((800 * 600 * 1.2 + 100 * 1200) / missing)
    assert over.offered - over.demand == pytest.approx(150 * 1800)
    assert len(parted(levels, 0.0)) == 1 and len(parted(levels, 2000 * HOUR)) == 1
