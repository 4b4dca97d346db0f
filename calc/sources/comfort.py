"""Sources of heat, air, fuel and water."""

from calc.sources.source import Source

COMFORT = {
    "iso-6946": Source(
        "ISO 6946:2017",
        "layers in series; surface resistances, table 7",
        "two reprints and a list of values by direction",
    ),
    "iso-6946-upper": Source(
        "ISO 6946:2017",
        "paths side by side by area (upper limit)",
        "restated in building guides; metal through insulation is outside the standard's method",
    ),
    "iso-10456": Source(
        "EN ISO 10456 (EN 12524)",
        "design values: steel 50 W/(m·K); plywood 0.13; glass 1.0; timber 1600 J/(kg·K); water 4190 J/(kg·K)",
        "table shipped in an open program library, half of it compared with a reprint",
    ),
    "conductivity": Source(
        "EN 12524, ASHRAE Handbook of Fundamentals and CIBSE Guide A",
        "thermal conductivity by material, by row of our table",
        "tables shipped in an open program library and a reprint; usual declared values where no source is named",
    ),
    "mackay-air": Source(
        "MacKay, Sustainable Energy, without the hot air",
        "appendix E, page 289: 1.2 kJ/(m³·K); air changes by room",
        "open book",
    ),
    "lumped": Source(
        "Lumped heat balance, t = (C/H) ln(P/(P − H ΔT))",
        read="law of nature for one body at one temperature",
    ),
    "who-rooms": Source(
        "WHO-based housing advice",
        "18 °C at night, 20 °C with small children, the old or the ill; risks below 16, 12 and 9 °C",
        "two housing advisers who cite WHO; later reviews call the evidence moderate",
    ),
    "metabolic": Source(
        "ASHRAE table of metabolic rates",
        "sleeping, 40 W/m² of body surface",
        "restated on an engineering page",
    ),
    "fuel-heat": Source(
        "US DOE Alternative Fuels Data Center",
        "lower heating values: diesel 128 488, petrol 116 090, propane 84 250 BTU/gal",
        "its page on gallon equivalents; texts quoting its table",
    ),
    "fuel-density": Source(
        "Staffell, The Energy and Fuel Data Sheet, 2011",
        "general properties; propane 507.5 kg/m³ by CoolProp 8.0.0 at 15 °C",
        "open data sheet and an open program",
    ),
    "co-alarm": Source(
        "EN 50291-1 and UL 2034",
        "alarm points of carbon monoxide alarms",
        "summaries and alarm manuals, each point in two or more",
    ),
    "co-limits": Source(
        "WHO air quality guidelines, second edition, 2000; NIOSH",
        "carbon monoxide, exposure by time",
        "table in a medical paper; criteria document; exposure table of an instrument manual",
    ),
    "atmosphere": Source(
        "ICAO standard atmosphere",
        "pressure to 11 km",
        "constants as listed by a university laboratory",
    ),
    "energy-balance": Source(
        "Heat balance of air, Q = P/(ρ c ΔT)",
        "c 1006 J/(kg·K), ρ of dry air at sea level",
        "law of nature; c compared with CoolProp 8.0.0",
    ),
    "ideal-gas": Source("Ideal gas law", "dry air, 287.05 J/(kg·K)", "law of nature"),
    "device-loss": Source("Definition of efficiency", read="definition"),
    "stack": Source(
        "Stack effect, Q = C A √(2 g h ΔT/Ti)",
        "discharge coefficient 0.65 to 0.70, sharp edges 0.60 to 0.65",
        "encyclopedia article; the lower values are common practice",
    ),
    "series-vents": Source(
        "BS 5925", "openings in series, 1/A² = 1/A₁² + 1/A₂²", "restated in ventilation texts"
    ),
    "en-50272": Source(
        "EN 50272-2:2001 (now IEC 62485-2)",
        "clause 8.2: Q = 0.05 n I_gas C, opening A = 28 Q",
        "planning manual and a battery catalogue that restate it",
    ),
    "en-50272-gas": Source(
        "EN 50272-2:2001",
        "clause 8.2, table 1: gas current by cell and charging, to about 40 °C",
        "planning manual and a battery catalogue that restate it",
    ),
    "en-50272-3": Source(
        "EN 50272-3 (now IEC 62485-3)",
        "traction batteries: gas current in A per 100 Ah; free volume 2.5 Q",
        "ventilation notes for traction batteries",
    ),
    "lithium-gas": Source(
        "Larsson et al., Scientific Reports 2017, 7, 10018",
        "hydrogen fluoride 20 to 200 mg per Wh of burning lithium-ion cells",
        "abstract",
    ),
    "eer": Source(
        "Definition of COP and EER", "EER in BTU/h per watt is 3.412 COP", "definition of the BTU"
    ),
    "sol-air": Source(
        "ASHRAE sol-air temperature",
        "outside air warmer by α I R_se; the sky's share left out",
        "restated in the manual of a simulation program",
    ),
    "cibse-surface": Source(
        "CIBSE Guide A3, table A3.6",
        "outside surface resistance of a sheltered roof, 0.07 m²·K/W; 0.04 in normal wind",
        "reprint in the help file of a simulation program",
    ),
    "g-value": Source(
        "g-value of a single clear pane", "0.87 at 3 mm", "glossary of a glass trade"
    ),
    "jones-people": Source(
        "Jones, Air Conditioning Engineering, fifth edition",
        "table 7.16: 115 W seated at rest, of which 65 W sensible at 26 °C",
        "restated on an engineering page",
    ),
    "heat-in-water": Source(
        "Heat in water, E = ρ V c ΔT", "4190 J/(kg·K), 1000 kg/m³", "EN ISO 10456 as above"
    ),
    "legionella": Source(
        "UK code L8 on legionella",
        "grows between 20 and 45 °C; store hot water at 60 °C",
        "two water advisers who quote it",
    ),
}
