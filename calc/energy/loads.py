"""What a load asks of the bank."""


def bank_current(power: float, voltage: float, efficiency: float) -> float:
    """Return the current [A] drawn from the bank by `power` [W] at bank `voltage` [V].

    I = P/(V eta). `efficiency` is that of whatever stands between (1 for a direct connection).
    """
    return power / (voltage * efficiency)
