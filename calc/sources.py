"""The bibliography: every source a step, a caution or a table may name."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Source:
    """A published source, or a plain statement that there is none.

    `place` is where in it; `read` tells how we came by it, since a paid standard is mostly known
    to us from reprints and quotations.
    """

    title: str
    place: str = ""
    read: str = ""

    def __str__(self) -> str:
        return f"{self.title}, {self.place}" if self.place else self.title


PRACTICE = "practice"
MEMORY = "memory"

SOURCES: dict[str, Source] = {
    PRACTICE: Source("Common practice, no source"),
    MEMORY: Source("From memory, not confirmed against a text"),
    "ohm": Source("Ohm's law and the power law", read="definition"),
    "nec-8": Source(
        "NFPA 70 (National Electrical Code)",
        "chapter 9, table 8, stranded copper at 75 °C",
        "reprint, compared with a second copy",
    ),
    "iec-60228": Source(
        "IEC 60228:2004", "table 3, class 5 copper at 20 °C", "three reprints that agree"
    ),
    "copper-temperature": Source(
        "FAA AC 43.13-1B",
        "paragraph 11-66, zero-resistance temperature 234.5 °C of copper",
        "open regulator text",
    ),
    "abyc-drop": Source("ABYC E-11", "11.14.2.6", "clause quoted in reprints"),
    "en-1648": Source(
        "EN 1648-2",
        "voltage drop limits for 12 V leisure vehicles",
        "quoted by a user of the standard",
    ),
    "33cfr-table": Source(
        "33 CFR 183.425 (US law for recreational boats)", "table 5", "open law text, reprint"
    ),
    "33cfr-notes": Source(
        "33 CFR 183.425",
        "table 5, notes 1 and 2",
        "open law text, reprint; the engine-space factor seen for 105 °C only",
    ),
    "33cfr-size": Source("33 CFR 183.425", "paragraphs (d) and (e)", "open law text"),
    "33cfr-place": Source("33 CFR 183.455", "paragraphs (b) and (c)", "open law text"),
    "abyc-105": Source(
        "ABYC E-11",
        "tables for 105 °C boat cable",
        "technical table of a cable maker, compared with two reprints",
    ),
    "nec-ambient": Source(
        "NEC 310.15(B)(1)",
        "ambient correction on a 30 °C base",
        "state residential code of 2021, table E3705.2; equal to √((Tc − Ta)/(Tc − 30 °C)) at the top of each band",
    ),
    "nec-125": Source(
        "NEC 210.20(A)", "125 % of a continuous load", "data bulletin that quotes it"
    ),
    "fuse-ratings": Source(
        "Fuse families and their ratings, by row of our table",
        "ISO 8820-3, ISO 8820-5, UL 248-15 and class values",
        "part seen, part from memory: each family says which",
    ),
    "wire-mm2": Source(
        "Common practice, no source",
        "a metric size is worked as the next smaller gauge by area; gauge areas by ASTM B258",
    ),
    "peukert": Source(
        "Peukert's law in rated-hours form",
        "exponent ranges by battery type",
        "encyclopedia article that cites a battery handbook",
    ),
    "peukert-li": Source(
        "Omar et al., Energies 2013, 6, 5625", "use of Peukert's law for lithium cells", "abstract"
    ),
    "ieee-485": Source(
        "IEEE Std 485",
        "table 1, cell size correction for temperature, base 25 °C",
        "copy in a public file; rows below 4.4 °C from memory",
    ),
    "lfp-frost": Source(
        "Cell data sheet of a 280 A·h class LFP cell",
        "charging 0 to 60 °C",
        "quoted in an article on charging in frost",
    ),
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
