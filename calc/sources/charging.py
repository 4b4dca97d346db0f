"""Sources of charging: by the sun, by the engine, by a lead from the shore."""

from calc.sources.source import Source

CHARGING = {
    "ampere-hour-law": Source(
        "Woodbridge's ampere-hour law of 1935",
        "the current [A] must not exceed the charge still missing [Ah]: exponential in time",
        "technical page that states the law; 90 % in 2 to 3 h",
    ),
    "bulk-end": Source(
        "Educational page on charging lead-acid batteries",
        "bulk charging: about three quarters charged at its end",
        "page seen",
    ),
    "bulk-most": Source(
        "Educational page on charging lead-acid batteries, bulk current",
        "usually no more than 25 % of the Ah",
        "page seen",
    ),
    "sealed-hours": Source(
        "Educational article on charging lead-acid batteries (reprinted)",
        "sealed: 12 to 16 h; 10 h or less with stages and more current, perhaps not quite full",
        "article seen",
    ),
    "incomplete-charge": Source(
        "Hund, Capacity Loss in PV Batteries and Recovery Procedures (Sandia National Laboratories)",
        "incomplete recharge: the predominant cause of early capacity loss",
        "abstract",
    ),
    "charge-efficiency": Source(
        "Textbook chapter on lead-acid and lithium-ion batteries, section 13.2",
        "charge efficiency around 85 % for lead-acid, almost 100 % for lithium-ion",
        "passage quoted on a question-and-answer page",
    ),
    "caravan-supply": Source(
        "Whitfield, The Electricians Guide",
        "caravans: table 7.5 and section 7.9.2, lead fully uncoiled, RCD tested by its button, 30 mA",
        "open copy; the sixteenth edition of the UK rules",
    ),
    "caravan-lead": Source(
        "DIN VDE 0100-721 and BS 7671",
        "lead of 25 m ± 2 m; 2.5 mm² for 16 A",
        "article in a trade journal; guidance of a show site",
    ),
    "neutral-apart": Source(
        "WAC 296-150C-1310 (Washington State, commercial coaches)",
        "neutral kept apart from the frame and from earth in the vehicle",
        "open regulator text",
    ),
    "alternator-manual": Source(
        "Technical manual of a marine diesel engine",
        "page 83, output test at 13.5 V, 50 A class: hot 16, 41 and 48 A at 1300, 2500 and 5000 rpm of the alternator; cold 24 and 50 A",
        "manual page seen",
    ),
    "alternator-rating": Source(
        "Paper on alternator ratings",
        "first paragraphs: the rating is for a cold machine at full speed, not for a hot one or one at idle",
        "page seen",
    ),
    "alternator-shaft": Source(
        "Neacsu, chapter on starter and alternator (doi 10.1201/9781003053231-3)",
        "about half of what a 14 V claw-pole alternator takes from the engine comes out",
        "abstract",
    ),
    "bank-resistance": Source(
        "Short-circuit current for each Ah of lead-acid; PyBaMM, parameter set Prada2013, of an LFP cell",
        "10 to 20 A for each Ah; voltage lost at 1C, 73 to 91 mV a cell",
        "guide of a breaker maker seen; computed",
    ),
    "charger-balance": Source(
        "Energy balance of a converter", "input is output over efficiency", "definition"
    ),
    "bank-balance": Source(
        "Energy balance of a bank, hour by hour",
        "what comes in is what goes out, what is lost and what stays",
        "law of nature",
    ),
}
