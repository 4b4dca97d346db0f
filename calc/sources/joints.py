"""Sources of bolted joints."""

from calc.sources.source import Source

JOINTS = {
    "iso-898": Source(
        "ISO 898-1", "proof loads and stress areas, coarse thread", "reprint of the tables"
    ),
    "b1.1": Source(
        "ASME B1.1",
        "tensile stress area of unified threads, coarse series",
        "thread tables of two reference pages and a fastener maker, which print the same areas",
    ),
    "strength": Source(
        "Strength of stud materials, by row of our table",
        "ISO 898-1 for steel classes; ISO 3506-1 for stainless; ISO 8839 for copper; a telecom DC power manual, page 58, for brass",
        "reprints of the standards, and the manual",
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
    "terminal-stack": Source(
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
    "sae-drop": Source(
        "SAE, voltage drop in vehicle circuits",
        "0.1 V for connections of high current",
        "quoted in a car workshop manual",
    ),
    "neta-resistance": Source(
        "ANSI/NETA acceptance testing, bolted connections",
        "look into values more than 50 % above the lowest of like connections",
        "as restated in an instrument maker's article on busbar joints",
    ),
    "neta-thermal": Source(
        "NETA ATS and MTS",
        "Table 100.18, thermographic survey",
        "reprint of 2003, compared with a second copy",
    ),
    "mil-thermal": Source(
        "US military scale of temperature rise", "four priorities from 10 K up", "reference page"
    ),
    "busbar-joint": Source(
        "Resistance of good bolted busbar joints", "5 to 15 µΩ", "instrument maker's article"
    ),
    "power-contact": Source(
        "Resistance of well-kept power contacts", "10 to 300 µΩ", "article on substation testing"
    ),
    "small-connector": Source(
        "Article on vehicle connectors", "a small one may drop 4 mV an ampere", "article seen"
    ),
    "nbs-glow": Source(
        "Meese and Beausoliel, NBSIR 76-1011 (1976)",
        "exploratory study of glowing electrical connections",
        "abstract",
    ),
    "oxide": Source(
        "Sletbak et al., IEEE Holm Conference on Electrical Contacts (1991)",
        "glowing contact areas in loose copper wire connections",
        "abstract",
    ),
    "kohlrausch": Source(
        "Kohlrausch's relation of voltage and temperature in a contact (Holm, Electric Contacts)",
        "T² = T₀² + U²/4L; copper softens at 463 K",
        "in a public program that proves it by finite elements, and a consultant's note on connectors; the book not seen",
    ),
    "iec-61439": Source(
        "IEC 61439-1", "10.10.2.3.1, I₁/I₂ = (ΔT₁/ΔT₂)^0.61", "quoted on a question-and-answer page"
    ),
    "ir-load": Source(
        "Check list for thermographic rounds", "at least 40 % of full load", "reference page"
    ),
    "split-test": Source(
        "Engineers' mailing list, 2001",
        "a fastener company's engineer on split washers and vibration",
        "archive; a report of a test, not the test",
    ),
    "spring-torque": Source(
        "Car workshop manual, standard torques",
        "85 % with spring washers or oily threads",
        "notes of the table",
    ),
    "sae-j429": Source(
        "SAE J429", "proof loads of inch bolts: grades 2, 5 and 8", "three reprints that agree"
    ),
    "iso-8839": Source(
        "ISO 8839", "bolts and nuts of copper and brass, stress at 0.2 %", "reprint of the table"
    ),
}
