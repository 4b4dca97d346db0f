"""Sources of appliances, lamps and inverters."""

from calc.sources.source import Source

LOADS = {
    "warm-room": Source(
        "Harrington, Aye and Fuller, Applied Energy 211, 2018, 346 to 357",
        "warm air makes a refrigerator leak more and pump worse",
        "abstract",
    ),
    "pulse": Source(
        "Peak power and duty cycle",
        "average over peak is time on over period",
        "encyclopedia article",
    ),
    "rerating": Source(
        "Lamp rerating",
        "power by voltage to 1.6, current to 0.55, light to 3.4",
        "encyclopedia article that cites a handbook for electrical engineers",
    ),
    "lightness": Source(
        "CIE 1976 lightness",
        "116 (Y/Yn)^(1/3) − 16; 903.3 Y/Yn below 0.008856",
        "vocabulary of the CIE and an optics page",
    ),
    "strip": Source(
        "Diodes in series on a charging battery",
        "three white ones: half as much current again from 12.6 V to 13.5 V",
        "electronics teaching page",
    ),
    "power-factor": Source(
        "Definition of power factor",
        "watts over volt-amperes",
        "open textbook on electric circuits",
    ),
    "motor-start": Source(
        "NEC on small motor-compressors; motor starting",
        "6 times the running current where none is marked; 5 to 7 in general",
        "explanation of an electricians' examination question",
    ),
    "code-letters": Source(
        "NEC table 430.7(B)",
        "locked-rotor kV·A per horsepower, letters F, G and J",
        "restatement for electricians; letter H from memory",
    ),
    "weights": Source(
        "CEC and European weighting of inverter efficiency",
        "table of weights",
        "article on the two weightings",
    ),
    "inverter-input": Source(
        "NEC 690.8(A)",
        "current into an inverter: rated power at the lowest voltage, over efficiency",
        "forum posts that quote the rule",
    ),
}
