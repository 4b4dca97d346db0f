"""Sources of switches and relays."""

from calc.sources.source import Source

SWITCHES = {
    "faa-switch": Source(
        "FAA AC 43.13-1B",
        "table 11-4, switch derating factors; paragraph 11-53",
        "open regulator text",
    ),
    "relay-coil": Source(
        "California Department of Transportation, relays and solenoids on its vehicles",
        "8.1 suppression at the coil; 8.3 at least 110 % of the least pull-in voltage",
        "open page of the department",
    ),
    "relay-contact": Source(
        "An equipment maker's answers on its relay",
        "10 A at 250 V a.c. or 30 V d.c.; at 110 V d.c. no more than 0.5 A; inductive a.c. 0.35 to 1",
        "page seen",
    ),
    "nec-switch": Source(
        "NEC 404.14(A)",
        "a.c. switches only on a.c.; resistive loads up to their rating",
        "clause quoted in a trade forum",
    ),
    "lamp-inrush": Source(
        "Training slide on load types",
        "lamps: inrush of up to five times the running current",
        "page of a component seller",
    ),
}
