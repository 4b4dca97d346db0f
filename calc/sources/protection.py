"""Sources of fuses, faults and what protects a conductor."""

from calc.sources.source import Source

PROTECTION = {
    "33cfr-place": Source("33 CFR 183.455", "paragraphs (b) and (c)", "open law text"),
    "nec-125": Source(
        "NEC 210.20(A)", "125 % of a continuous load", "data bulletin that quotes it"
    ),
    "fuse-ratings": Source(
        "Fuse families and their ratings, by row of our table",
        "ISO 8820-3, ISO 8820-5, UL 248-15 and class values",
        "part seen, part from memory: each family says which",
    ),
}
