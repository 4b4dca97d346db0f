"""Sources of what has no page of its own, and laws of nature."""

from calc.sources.source import Source

PRACTICE = "practice"
MEMORY = "memory"

COMMON = {
    PRACTICE: Source("Common practice, no source"),
    MEMORY: Source("From memory, not confirmed against a text"),
    "ohm": Source("Ohm's law and the power law", read="definition"),
}
