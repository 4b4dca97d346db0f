"""Sources of conductors, voltage drop and ampacity."""

from calc.sources.source import Source

WIRES = {
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
    "wire-mm2": Source(
        "Common practice, no source",
        "a metric size is worked as the next smaller gauge by area; gauge areas by ASTM B258",
    ),
}
