"""wire-drop from its fields: the book's function as it stands."""

from calc.electrical.wire_drop import wire_drop

calculate = wire_drop
