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
    "iec-60228-2": Source(
        "IEC 60228:2004", "table 2, class 2 copper at 20 °C", "three reprints that agree"
    ),
    "copper-iacs": Source(
        "IEC 60028, standard annealed copper",
        "1/58 Ω·mm²/m at 20 °C; tin by ASTM B33 table 2; areas by ASTM B258",
        "definition, as summarised; a copy of ASTM B33-04",
    ),
    "awg-area": Source("ASTM B258", "definition of the gauge, solid area", "computed"),
    "sae-area": Source(
        "SAE J1127 and J1128, least copper by size",
        "as restated beside the AWG areas",
        "two reprints in boat-wiring guides that agree",
    ),
    "nec-parallel": Source(
        "NEC 310.10(H), conductors in parallel",
        "paragraphs (1), exception 1, and (2)",
        "the paragraphs of 2014 as quoted in a trade forum; numbered (G) since 2020 (from memory)",
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
        "table 5, notes 1 and 2, and 183.435(b)",
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
    "nec-310-16": Source(
        "NEC 310.16",
        "insulated copper, 60, 75 and 90 °C columns",
        "two copies of an older edition and one of 2023; the lower value where editions differ",
    ),
    "nec-bundle": Source(
        "NEC 310.15(C)(1)", "more than three loaded conductors", "three reprints that agree"
    ),
    "nec-small": Source(
        "NEC 240.4(D)",
        "small conductors",
        "reprints for 14 to 10 AWG; one trade reference page for 18 and 16 AWG",
    ),
    "nec-ratings": Source("NEC 240.6(A)", "standard ampere ratings", "reprint"),
    "nec-terminals": Source(
        "NEC 110.14(C)", "temperature limits of terminals", "paragraphs (1)(a) and (1)(b) as quoted"
    ),
    "wire-mm2": Source(
        "Common practice, no source",
        "a metric size is worked as the next smaller gauge by area; gauge areas by ASTM B258",
    ),
}
