"""What cooling asks of the bank.

In scope: a cooler of known ratio of cold to electric power, running part of the time. Out of scope:
moisture taken out of the air, and how the ratio falls when it is hotter outside than on the label.
"""


def electric_power(cooling: float, ratio: float) -> float:
    """Return the electric power [W] for `cooling` [W] at `ratio` (COP, watts of cold per watt).

    A label's EER in BTU/h per watt is 3.412 times the COP, by definition of the BTU.
    """
    return cooling / ratio


def duty(load: float, cooling: float) -> float:
    """Return the share of the time a cooler of `cooling` [W] must run against `load` [W].

    More than one where it cannot keep up.
    """
    return load / cooling
