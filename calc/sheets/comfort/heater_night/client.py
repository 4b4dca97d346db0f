"""heater-night explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not sleep with this heater running: its fumes can kill.", "flame.exhaust-inside flame.no-alarm"),
        Point("Do not count on the battery for this night: it is empty before morning.", "stop"),
        Point("Heat with fuel: heat from the battery costs too much of it.", "load.all-becomes-heat"),
        Point("Check exhaust, air and alarm first, then heat with {fuel}.", "flame.unchecked"),
        Point("Settle one point before you rely on this heater.", "caution"),
        Point("Heat with {fuel}, not from the battery.", "fine"),
    ),
    reasons=(
        Point("Electric heat takes {electric_charge} a night. The battery gives {gives}."),
        Point("With {fuel}, fan and pump take only {charge}: {bank_share} of that.", "fine caution", lambda r: r.heating.burns),
        Point("{fuel_used} of {fuel} gives {hours} of heat.", when=lambda r: r.heating.burns),
        Point("Fan and pump of the heater take {charge} in a night.", when=lambda r: r.heating.burns),
        Point("One litre of diesel holds {litre_in_banks} times the energy of a full battery of {capacity}."),
    ),
    neglect=(
        Point("Carbon monoxide has no smell: people fall asleep and do not wake up.", "flame."),
        Point("With electric heat the battery is empty in the night, wears out early and has to be bought again."),
    ),
    cautions=(
        Point("Carbon monoxide: a heater that burns fuel needs its exhaust outside and a working alarm inside.", when=lambda r: r.heating.burns),
    ),
    bars=(Bar("Heater as planned", "charge", when=lambda r: r.heating.burns), Bar("Electric heat", "electric_charge"), Bar("The battery gives", "gives")),
)
