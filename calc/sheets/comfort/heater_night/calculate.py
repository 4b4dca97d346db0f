"""heater-night from its fields: the book's function as it stands."""

from calc.comfort.heaters import heater_night

calculate = heater_night
