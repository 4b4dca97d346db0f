"""remote-switch from its fields: the book's function as it stands, and the ways on from it."""

from calc.electrical.switching import RemoteSwitch, remote_switch
from calc.units.compare import at_least, at_most
from calc.worksheet.next_steps import NextStep

WIRE_SHEET = 0.01, 2000.0  # A, what the sheet of a wire takes

calculate = remote_switch


def onward(found: RemoteSwitch) -> tuple[NextStep, ...]:
    """Return where the coil's draw and a bank's own line are worked out further."""
    moves = []
    if found.relayed:
        drain = (("drain", f"{found.coil.current:.6g} A"),)
        moves.append(NextStep("How long the bank lasts with the coil on", drain, "standby-drain"))
    current, voltage = found.line.current, found.line.voltage
    least, most = WIRE_SHEET
    if found.line.dc and at_least(current, least) and at_most(current, most):
        texts = ("current", f"{current:.6g} A"), ("voltage", f"{voltage:.6g} V")
        moves.append(NextStep("The line's own wire", texts, "wire-size"))
    return tuple(moves)
