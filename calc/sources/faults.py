"""Sources of fault finding: what a sound circuit shows, and where a reading begins to tell."""

from calc.sources.source import Source

FAULTS = {
    "ground-drop": Source(
        "Repair manual of a small 12 V vehicle",
        "voltage drop test, page 189: below 0.1 V on the ground side good, above 0.2 V to be mended",
        "manual page seen",
    ),
    "army-drop": Source(
        "US Army TM 10-3930-671-24",
        "page F-303: a circuit loses 0.20 V for each 100 A at most",
        "open manual page seen",
    ),
    "army-cables": Source(
        "US Army TM 5-2420-230-24-2",
        "page 13-23: plus and minus cable together less than 0.5 V at 12 V under 500 A, 1 V at 24 V under 250 A",
        "open manual page seen",
    ),
    "army-rested": Source(
        "US Army TM 5-3805-262-20",
        "page 5-142, voltmeter against charge: 12.6 V full, 12.4 V three quarters, 12.2 V half",
        "open manual page seen",
    ),
    "worn-bank": Source(
        "TM 5-684 / NAVFAC MO-200 / AFJMAN 32-1082",
        "paragraph 14-29: replace below 80 % of the rated capacity",
        "open manual page seen",
    ),
    "open-part": Source(
        "FAA-H-8083-30, Aviation Maintenance Technician Handbook",
        "tracing opens: the whole voltage is across the open part, none across the others",
        "open regulator text, as reprinted",
    ),
    "rested-lead": Source(
        "Battery Council International, rested voltage against charge",
        "12 V block at 26.7 °C: 12.65 V full, 12.45 V three quarters, 11.89 V empty",
        "reprint",
    ),
    "rested-agm": Source(
        "Owner manual with a charging table for AGM batteries",
        "12.8 V and more full, 12.6 V from three quarters",
        "manual seen",
    ),
    "rested-lfp": Source(
        "Sunil, Pattipati and Balasingam, IEEE Transactions on Instrumentation and Measurement, 2025",
        "open data of one LFP cell, slow charge and discharge",
        "data read at 98, 25 and 5 %",
    ),
    "lfp-relaxing": Source(
        "Voicila et al., Batteries 2025, 11(5), 186",
        "LFP cells keep settling for up to a day",
        "abstract",
    ),
    "fuse-drop": Source(
        "DIN 72581-3, type E",
        "voltage drop at rated current, 30 to 80 A: 100 mV at most",
        "extract of the standard",
    ),
    "charge-volts": Source(
        "Manual of a charger for lead-acid batteries",
        "absorption at 14.4 V for 12 V",
        "manual page seen",
    ),
}
