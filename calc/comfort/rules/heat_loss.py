"""Judgements on a van in the cold: its heater, its air, its ribs and glass, and who sleeps there."""

from typing import Annotated

# fmt: off
from calc.comfort.cold_night import ColdNight, HeaterSize, WarmUp
from calc.comfort.heat_loss import HeatLoss
from calc.comfort.sleepers import FEW_AIR_CHANGES, FRESH_AIR, Sleepers
from calc.energy.limits import FREEZING
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.constants import HOUR
from calc.units.si import Celsius, Number, Seconds, Share, Tag

# Below which the risk to the lungs rises: housing advice after WHO
COLD_ROOM: Annotated[Celsius, Tag("room below which lungs suffer")] = 16.0
# Below which the heart is strained: housing advice after WHO
STRAINING_ROOM: Annotated[Celsius, Tag("room below which the heart is strained")] = 12.0
# Of the loss, below which nothing is left for wind: common practice, no source
LEAST_OUTPUT: Annotated[Number, Tag("least output of a heater against the loss")] = 1.1
# Of what is to be bought, from which a fuel heater idles and soots: common practice, no source
FAR_TOO_LARGE: Annotated[Number, Tag("output of a heater against the one to buy that is too much")] = 2.5
# Spread of the loss by bare ribs that is worth a word: common practice, no source
WIDE_BOUND: Annotated[Number, Tag("upper bound of a loss worth a word")] = 1.25
# Share of the loss through glass that is worth a word: common practice, no source
MUCH_GLASS: Annotated[Share, Tag("share of the loss through glass worth a word")] = 0.3
# Worth a word, since fuel and time go into it: common practice, no source
LONG_WARM_UP: Annotated[Seconds, Tag("time to warm up worth a word")] = 2 * HOUR

TOO_WEAK = Rule[HeaterSize](
    id="heater.too-weak", level=Level.STOP, when=lambda s: s.output is not None and not at_least(s.output, s.loss),
    headline="A heater of {output} is not enough: {loss} is lost.",
    mend=lambda s: Change({"heater_output": max(s.heater, s.high)}),
)
WARM_UP_BEYOND_BANK = Rule[ColdNight](
    id="heater.warm-up-beyond-bank", level=Level.STOP, when=lambda n: n.warm_up_beyond_bank,
    headline="Warming up takes {warming.charge} and {heating.hours} after it {heating.draw.charge}, and the bank gives {heating.draw.bank.gives}.",
    mend=lambda n: None if n.warming.charge is None else Change({"capacity": (n.heating.draw.charge + n.warming.charge) / n.heating.draw.bank.usable}),
)
NO_SPARE = Rule[HeaterSize](
    id="heater.no-spare", level=Level.CAUTION,
    when=lambda s: s.output is not None and not (at_least(s.output, s.heater) and at_least(s.output, s.high)),
    headline="{output} leaves too little reserve: {heater} with margin, {high} if the ribs are bare.",
    mend=lambda s: Change({"heater_output": max(s.heater, s.high)}),
)
LITTLE_OUTPUT = Rule[HeaterSize](
    id="heater.nothing-for-wind", level=Level.CAUTION, when=lambda s: not at_least(s.power, LEAST_OUTPUT * s.loss),
    headline="{loss} lost, and {power} leaves too little for wind.",
    mend=lambda s: Change({"margin": LEAST_OUTPUT - 1} if s.output is None else {"heater_output": LEAST_OUTPUT * s.loss}),
)
LARGER_THAN_NEEDED = Rule[ColdNight](
    id="heater.far-too-large", level=Level.ADVICE, source="practice",
    when=lambda n: n.heating.burns and n.size.output is not None and not at_most(n.size.output, FAR_TOO_LARGE * n.size.to_buy),
    text="Soot: {size.output} is far more than the {size.to_buy} this van needs. A fuel heater that large starts and stops, and soots up: choose a smaller one.",
    mend=lambda n: Change({"heater_output": n.size.to_buy}),
)
SLOW = Rule[WarmUp](
    id="heater.slow-to-warm", level=Level.CAUTION, when=lambda w: w.slow,
    headline="{power} leaves too little for warming up from cold in good time.",
)
RIBS_BEYOND_HEATER = Rule[HeaterSize](
    id="heater.less-than-bare-ribs", level=Level.ADVICE, when=lambda s: not at_most(s.high, s.heater), source="iso-6946-upper",
    text="Bare ribs may take the loss to {high}, more than the margin covers. The heater to buy counts that; insulating the ribs makes it smaller.",
    mend=lambda s: Change({"margin": s.high / s.loss - 1}),
)
COLD = Rule[HeatLoss](
    id="room.cold", level=Level.CAUTION, source="who-rooms", when=lambda h: h.inside < COLD_ROOM,
    headline="{inside} is colder than advised for sleep: 18 °C, and never long below 16 °C.",
    text="Below 16 °C the lungs are at risk. Small children, older and ill people need 20 °C.",
    mend=lambda h: Change({"inside": COLD_ROOM}),
)
STRAINS_HEART = Rule[HeatLoss](
    id="room.strains-heart", level=Level.CAUTION, source="who-rooms", when=lambda h: h.inside < STRAINING_ROOM,
    headline="{inside} is colder than advised for sleep: 18 °C, and never long below 16 °C.",
    text="Below 12 °C the heart is strained, and at 9 °C the body cools within about two hours. Do not plan a night like this for anyone.",
    mend=lambda h: Change({"inside": COLD_ROOM}),
    covers=frozenset({"room.cold"}),
)
STUFFY = Rule[Sleepers](
    id="room.stuffy", level=Level.CAUTION, when=lambda s: s.stuffy,
    headline="Open a vent: too little fresh air for sleep. Include it in the air changes.",
    mend=lambda s: Change({"air_changes": max(FEW_AIR_CHANGES, FRESH_AIR * s.people / s.volume)}),
)

NEVER_SEAL = Rule[object](
    id="room.never-seal", level=Level.ADVICE, source="practice",
    text="Never seal a van tight to save heat: people, cooking and flames need air. Whatever burns needs outside air, an exhaust outside, and a carbon monoxide alarm near the bed.",
)
FRESH_AIR_FOR_SLEEPERS = Rule[Sleepers](
    id="room.fresh-air", level=Level.ADVICE, source="practice", when=lambda s: s.stuffy or s.people == 0,
    text="Stale air: each sleeper needs about 15 m³/h of outside air (no source). With less, moisture condenses and runs down the glass.",
)
WATER_FREEZES = Rule[HeatLoss](
    id="water.freezes", level=Level.ADVICE, source="practice", when=lambda h: h.outside < FREEZING,
    text="Drain or heat tanks, pipes and pumps outside the shell: water freezes where the heat does not reach. Never charge an LFP bank below 0 °C.",
)
RIBS_MATTER = Rule[HeatLoss](
    id="shell.ribs-matter", level=Level.ADVICE, source="iso-6946-upper", when=lambda h: not at_most(h.high, WIDE_BOUND * h.loss),
    text="The ribs matter here: from {low} to {high}, depending on the bare metal. Insulate over the ribs, even thinly.",
)
GLASS_MATTERS = Rule[HeatLoss](
    id="shell.glass-matters", level=Level.ADVICE, source="iso-6946", when=lambda h: h.glass_loss > MUCH_GLASS * h.loss,
    text="The glass alone loses {glass_loss}. Close-fitting covers on all of it reduce the total to {covered_loss}.",
)
LONG_TO_WARM = Rule[WarmUp](
    id="heater.long-to-warm", level=Level.ADVICE, source="lumped", when=lambda w: w.time is not None and w.time > LONG_WARM_UP,
    text="Warming up from cold takes about {time}. Start early or choose more power, and allow fuel for it.",
)
HIGHEST_CONDUCTIVITY = Rule[object](
    id="shell.highest-conductivity", level=Level.NOTE, source="conductivity",
    text="Conductivities are the highest found for each material; values and sources are listed with the answer. Wet insulation conducts several times more, so keep room air away from cold metal.",
)
ROUND_FIGURE_OF_AIR = Rule[object](
    id="air.round-figure", level=Level.NOTE, source="mackay-air",
    text="The book's round 1.2 kJ/(m³·K) is for mild air; the extra for colder air has its own line. Rooms: 0.5 per hour draught-proofed, 3 very draughty.",
)
BEDROOM = Rule[object](
    id="room.bedroom", level=Level.NOTE, source="who-rooms",
    text="Housing advice for sleep: 18 °C, or 20 °C with small children, older or ill people.",
)
