"""alternator-charge from its fields: the book's function as it stands."""

from calc.energy.drive import alternator_charge

calculate = alternator_charge
