"""standby-drain from its fields: the domain's function as it stands."""

from calc.energy.standing import standing

calculate = standing
