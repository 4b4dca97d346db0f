"""Sources of fuses, faults and what protects a conductor."""

from calc.sources.source import Source

PROTECTION = {
    "33cfr-place": Source("33 CFR 183.455", "paragraphs (b) and (c)", "open law text"),
    "nec-125": Source(
        "NEC 210.20(A)", "125 % of a continuous load", "data bulletin that quotes it"
    ),
    "fuse-ratings": Source(
        "Fuse families and their ratings, by row of our table",
        "ISO 8820-3, -4, -5 and -6, ISO 10924-4, UL 248-15, CSA C22.2 No. 248.19 and class values",
        "scopes of the standards and texts on them seen, part from memory: each family says which",
    ),
    "fuse-weakest": Source(
        "What small cartridges break on alternating current, by row of our table",
        "UL 248-14 at 250 V; IEC 60127-2, low breaking capacity",
        "fuse selection guide seen; IEC 60127-2 from memory",
    ),
    "small-fuse": Source(
        "A maker's page on small fuses",
        "at 25 °C a fuse should last if it carries no more than 75 % of its rating",
        "text seen",
    ),
    "interrupting": Source(
        "Classes of interrupting rating, by row of our table",
        "ABYC E-11 table V-A; ISO 8820-3; UL 248-2 and 248-12, clause 5.5",
        "reprints and scopes seen",
    ),
    "dc-guide": Source(
        "Guide to d.c. distribution of a breaker maker",
        "short-circuit current of a battery: V/R, or 10 to 20 times its Ah; i = I (1 − e^(−t/τ))",
        "text seen",
    ),
    "breaking-article": Source(
        "Article on fuse breaking capacity in off-grid systems",
        "a 100 Ah lead-acid battery: 1000 to 2000 A, up to 4000 A",
        "text seen",
    ),
    "fuse-test": Source(
        "30 CFR 28.41(b)",
        "time constants of the circuit in which d.c. fuses are tested",
        "open law text, as reprinted; for fuses of trailing cables in mines",
    ),
    "two-readings": Source(
        "Collection of electrical formulas", "batteries: R = (E − V)/I", "formula seen"
    ),
    "vrla-shorts": Source(
        "Gerner, Korinek and Ruhlmann: calculated and actual short circuit currents of VRLA batteries",
        "introduction and objectives",
        "the beginning of the paper seen",
    ),
    "abyc-bank": Source(
        "ABYC E-11",
        "11.10.1.2.3.2 and 11.10.1.4.1, banks above 500 Ah or 2200 CCA",
        "clauses as quoted in boating forums",
    ),
    "abyc-strings": Source(
        "ABYC E-11, application note",
        "three strings of two batteries: strings add, batteries in series do not",
        "worked example as quoted",
    ),
    "copper-heat": Source(
        "IEC 60949 and the annex of IEC 60364-5-54",
        "copper: k = 226 √(ln((234.5 + Tf)/(234.5 + Ti))) A·√s/mm²",
        "constants in a reprint; gives each k that BS 7671 prints",
    ),
    "short-temperatures": Source(
        "Temperatures of copper before and after a short, by row of our table",
        "BS 7671 tables 43.1 and 54.2 to 54.4; ICEA P-32-382",
        "installer's pocket guide of 2018 and a cable maker's specification",
    ),
    "adiabatic": Source(
        "BS 7671", "434.5.2 and 543.1.3: t = k²S²/I², up to 5 s", "regulations as quoted"
    ),
    "one-device": Source(
        "BS 7671",
        "432.1 and 435.1: one device against overload and short, with a breaking capacity no less than the fault",
        "432.1 as a study guide restates it; 435.1 from memory",
    ),
    "fuse-gates": Source(
        "Published time limits of fuses, by row of our table",
        "DIN 72581-3, UL 248, IEC 60127; data sheets to ISO 8820-3",
        "extracts of the standards; data sheets as quoted in public design notes; some rows from memory and marked",
    ),
}
