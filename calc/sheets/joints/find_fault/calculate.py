"""find-fault from its fields: the sound circuit, and where the search stands on it."""

from calc.energy.battery import Chemistry
from calc.faults.graph import Symptom, way_in
from calc.faults.model import Load, Unfed, searched_bank, searched_run, sound_circuit
from calc.faults.search import FaultSearch, TooLittle, fault_search
from calc.units.covered import NotCovered
from calc.units.kinds import CURRENT, POWER
from calc.units.shown import DOWN, UP, quantity_text
from calc.worksheet.fields import Measured

MORE_LOAD = "switch on a kettle, hob or hair dryer on the inverter, or all lamps and fans"


def calculate(
    *,
    symptom: Symptom,
    system: str,
    chemistry: Chemistry,
    load: Measured,
    length: float,
    conductor: str,
    fuse: float,
    heaviest: float,
    charger: float,
    capacity: float,
    standby: float,
    idle: float,
    limit: float,
    joint: float,
    joints: float,
    shunt: float,
    temperature: float,
    source_resistance: float | None,
    blocks: float,
    charge_voltage: float | None,
    cutoff: float,
    path: str | None,
) -> FaultSearch:
    """Return the next step of the search for `symptom` after the turns of `path`, or its end.

    Raises NotCovered for a load that the run cannot feed, for a current that is too small to tell
    anything at this step, or for more blocks than cells.
    """
    bank = searched_bank(
        system=float(system.split()[0]),
        chemistry=chemistry,
        capacity=capacity,
        blocks=blocks,
        resistance=source_resistance,
        charge_voltage=charge_voltage,
    )
    run = searched_run(
        conductor=conductor,
        length=length,
        temperature=temperature,
        rated=fuse,
        joint=joint,
        joints=joints,
        shunt=shunt,
        heaviest=heaviest,
    )
    by_power = load.kind is POWER
    asked = Load(current=None if by_power else load.value, power=load.value if by_power else None)
    try:
        circuit = sound_circuit(
            bank=bank, run=run, load=asked, charger=charger, charges=way_in(symptom).charging
        )
    except Unfed as unfed:
        most = quantity_text(unfed.most, POWER if unfed.power else CURRENT, rounding=DOWN)
        says = f"must be less than {most}: this bank and run can feed no more."
        raise NotCovered("load", says) from None
    if circuit.readings.far < bank.system / 2:
        says = "must be smaller, or the cable larger: less than half the voltage would arrive."
        raise NotCovered("load", says)
    try:
        return fault_search(
            symptom=symptom,
            path=path or "",
            circuit=circuit,
            standby=standby,
            idle=idle,
            limit=limit,
            cutoff=cutoff,
            heaviest=heaviest,
        )
    except TooLittle as little:
        least = quantity_text(little.least, CURRENT, rounding=UP)
        charges = way_in(symptom).charging
        on = "charge a bank that is well below full" if charges else MORE_LOAD
        says = f"must be at least {least} at this step, or a bad joint does not show: {on}."
        raise NotCovered("charger" if charges else "load", says) from None
