"""Sources of batteries and their loads."""

from calc.sources.source import Source

BANK = {
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
        "Cell data sheet of a 280 Ah class LFP cell",
        "charging 0 to 60 °C",
        "quoted in an article on charging in frost",
    ),
    "self-discharge": Source(
        "Pages of battery makers and sellers on storage",
        "share lost in a month near 25 °C",
        "several seen; they differ widely, and the default is our choice among them",
    ),
    "acid-freezing": Source(
        "United States Army TM 5-1185",
        "table III, with a vehicle owner's manual that agrees to 1 °F",
        "both seen; gravity by state from the Battery Council International table",
    ),
    "states-flooded": Source(
        "Battery Council International table of rested voltage",
        "with an operator manual of a road sign, page 50, and a battery maker's question page",
        "reprint and two texts seen",
    ),
    "states-agm": Source(
        "A battery maker's question page, rested voltage after 24 h",
        "with the AGM charging table of a vehicle owner's manual",
        "both seen",
    ),
    "states-gel": Source(
        "A battery maker's question page, rested voltage of gel after 24 h",
        "12 V block: 12.85 V full, 12.65 V three quarters, 11.80 V empty",
        "seen; the only table of gel that we found",
    ),
    "states-lfp": Source(
        "Sunil, Pattipati and Balasingam, IEEE Transactions on Instrumentation and Measurement 2025",
        "open data of one measured cell at C/32",
        "data file seen",
    ),
    "lfp-hysteresis": Source(
        "Article on hysteresis of the open-circuit voltage of LFP cells",
        "5 to 25 mV a cell",
        "seen",
    ),
    "rest-lead": Source(
        "Owner manual of an electric cart",
        "open-circuit voltage test: at least 6 h idle, preferably 24 h",
        "seen",
    ),
    "rest-lfp": Source(
        "Voicila et al., Batteries 2025, 11, 186",
        "voltage relaxes for 24 h and more",
        "abstract",
    ),
}
