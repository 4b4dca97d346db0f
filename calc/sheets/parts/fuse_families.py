"""Fuse families as choices, where a worksheet asks for a fuse that is there already.

Those whose d.c. voltage and interrupting rating are not known to us are offered too: such a fuse is
never found fine.
"""

from calc.electrical.opening import family_names
from calc.worksheet.fields import Option

NOT_NAMED = "not-named"

_SHORT = {
    "blade, regular (type C)": ("type C", "blade C"),
    "blade, miniature (type F)": ("type F", "blade F"),
    "blade, large (type E)": ("type E", "blade E"),
    "bolt-in strip, 30 mm (SF30)": ("SF30",),
    "bolt-in strip, 51 mm (SF51)": ("SF51",),
    "terminal-mount block": ("terminal block",),
    "bolted limiter strip": ("limiter strip",),
    "cartridge, class T": ("class T",),
    "cartridge, class C (UL 248-2)": ("class C",),
    "glass or ceramic cartridge (UL 248-14)": ("UL 248-14",),
    "quick miniature cartridge (IEC 60127)": ("IEC 60127",),
}

_LABELS = {  # where a telephone has no room for the name
    "glass or ceramic cartridge (UL 248-14)": "glass or ceramic (UL 248-14)",
    "quick miniature cartridge (IEC 60127)": "quick miniature (IEC 60127)",
}

FAMILIES = tuple(
    Option(name, _LABELS.get(name, ""), aliases=_SHORT.get(name, ())) for name in family_names()
)
