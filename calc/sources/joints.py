"""Sources of bolted joints."""

from calc.sources.source import Source

JOINTS = {
    "iso-898": Source(
        "ISO 898-1", "proof loads and stress areas, coarse thread", "reprint of the tables"
    ),
    "b1.1": Source(
        "ASME B1.1",
        "tensile stress area of unified threads",
        "formula and threads per inch from memory",
    ),
    "strength": Source(
        "Strength of stud materials, by row of our table",
        "ISO 898-1 for 8.8; ISO 3506-1 from memory for A2-70; a telecom DC power manual, page 58, for brass",
        "part seen, part from memory",
    ),
    "nut-factor": Source(
        "T = K·d·F with nut factors from a fastener chart",
        "K by finish and lubrication",
        "engineering data page; ±30 % of preload for the same torque",
    ),
    "preload": Source(
        "75 % of proof load for a joint that is opened again",
        "Shigley, Mechanical Engineering Design",
        "as quoted in an article",
    ),
    "terminal-torque": Source(
        "Tightening torques of terminals, by row of our table",
        "installation manuals of industrial drives, power supplies, telecom plant, switchgear",
        "manuals seen",
    ),
    "four-lugs": Source(
        "ABYC E-11 and FAA AC 43.13-1B, paragraph 11-174",
        "at most four terminals on a stud",
        "regulator text seen; ABYC in three restatements",
    ),
    "stack": Source(
        "Terminal stack on aircraft terminal blocks",
        "no washer in the current path",
        "aircraft mechanics' text",
    ),
    "split-washer": Source(
        "NASA RP-1228, Fastener Design Manual",
        "washers: a helical spring washer is flat at full torque",
        "as summarised by two secondary texts",
    ),
    "loosening": Source(
        "Sanclemente and Hess, Engineering Failure Analysis 14 (2007)",
        "64 transverse vibration tests: high preload holds",
        "abstract",
    ),
    "recheck": Source(
        "NEC Informative Annex I",
        "a later torque reading does not tell the torque used",
        "reference page",
    ),
    "33cfr-battery": Source(
        "33 CFR 183.420(g)", "battery connectors must not depend on spring tension", "open law text"
    ),
}
