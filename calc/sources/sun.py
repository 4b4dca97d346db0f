"""Sources of the sun, the sky and solar panels."""

from calc.sources.source import Source

SUN = {
    "almanac": Source(
        "Astronomical Almanac, low-precision formulas for the sun",
        "page C24 (1996), C5 (2017): 0.01° from 1950 to 2050",
        "two pages that restate them with a worked day",
    ),
    "spencer": Source(
        "Spencer, Fourier series representation of the position of the sun, 1971",
        "distance to the sun; 1366.1 W/m² at the mean distance, ASTM E490",
        "the source of an open program library",
    ),
    "fao-56": Source(
        "FAO Irrigation and Drainage Paper 56, 1998",
        "equations 21, 25 and 34, examples 8 and 9",
        "worked examples as transcribed in the tests of an open program",
    ),
    "fao-sunshine": Source(
        "FAO Irrigation and Drainage Paper 56, 1998",
        "equations 35 and 36 (Ångström), example 10",
        "worked examples as transcribed in the tests of an open program",
    ),
    "ineichen": Source(
        "Ineichen and Perez, Solar Energy 73, 2002, pages 151 to 157",
        "clear sky by Linke turbidity; air mass after Kasten and Young, 1989",
        "the source of pvlib 0.16.1, which our results are compared with",
    ),
    "liu-jordan": Source(
        "Liu and Jordan, isotropic sky",
        "(1 + cos β)/2 of the sky, (1 − cos β)/2 of the ground",
        "restated in the documentation of pvlib 0.16.1",
    ),
    "clear-day": Source(
        "Duffie and Beckman, Solar Engineering of Thermal Processes",
        "section 1.6: angle between the sun and a tilted plane",
        "worked examples as transcribed in the tests of an open program",
    ),
    "panel-rating": Source(
        "Standard test conditions of solar panels",
        "1000 W/m², cells at 25 °C",
        "the documentation of pvlib 0.16.1",
    ),
    "panel-losses": Source(
        "Dobos, technical report NREL/TP-6A20-62641, 2014",
        "usual losses of a photovoltaic system, 14.08 % together",
        "defaults of a function of pvlib 0.16.1",
    ),
    "panel-heat": Source(
        "King, Boyson and Kratochvil, Photovoltaic Array Performance Model, SAND2004-3535",
        "equations 11 and 12, parameters by mounting",
        "the documentation of pvlib 0.16.1",
    ),
    "panel-coefficients": Source(
        "List of crystalline silicon modules of the California Energy Commission, 2019",
        "power −0.53 to −0.37 %/K, middle −0.45; open voltage −0.33 %/K",
        "the list itself, percentiles of 20 946 modules worked with pvlib 0.16.1",
    ),
    "nec-690-7": Source(
        "NEC 690.7",
        "open voltages of the panels in series add, corrected for the coldest air by the label's coefficient, else by table 690.7(A)",
        "two textbooks with worked examples; the table in two printed copies that agree",
    ),
    "nec-690-8": Source(
        "NEC 690.8",
        "(A) 125 % of the short-circuit currents in parallel; (B) cable and fuse for 125 % of that",
        "article in a trade magazine; a textbook with a worked example",
    ),
    "iec-62548": Source(
        "IEC 62548 and IEC 60364-7-712, 431",
        "bright light 1.25; fuses for strings where the others' current is above what the panel is rated for, none for one or two; 1.5 to 2.4 times the short-circuit current",
        "clauses as quoted by a trade article with a worked example and by a page on string fuses",
    ),
    "elv-dc": Source(
        "IEC 61140 and the electrotechnical vocabulary, safety extra-low voltage",
        "120 V d.c. without ripple; 60 V where live parts may be touched in the dry (IEC 60364-4-41, 414.4.5)",
        "entry of the vocabulary seen; the clause from memory",
    ),
    "erbs": Source(
        "Erbs, Klein and Duffie, Solar Energy 28, 1982, pages 293 to 302",
        "diffuse share of a month by its clearness, 0.3 to 0.8",
        "restated in textbooks; the values are from memory",
    ),
    "klein": Source(
        "Klein, Solar Energy 19, 1977, pages 325 to 329",
        "monthly light on a tilted plane, isotropic sky; any facing summed over the day",
        "restated in textbooks, from memory; the ratio is compared with pvlib 0.16.1",
    ),
    "typical-sun": Source(
        "Typical meteorological years of NREL (TMY2, TMY3), ASHRAE (IWEC), SWEC, INETI and the German building institute (2010)",
        "twelve stations by number: daily totals by month",
        "the files as shipped with three open programs, summed by month",
    ),
}
