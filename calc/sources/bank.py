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
        "Cell data sheet of a 280 A·h class LFP cell",
        "charging 0 to 60 °C",
        "quoted in an article on charging in frost",
    ),
}
