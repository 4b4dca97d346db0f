"""Drawing figures by a number: the same ones for ever, on every machine."""

from collections.abc import Sequence

_MASK = 2**64 - 1


class Draw:
    """Picks from lists, by a seed: splitmix64 (Steele, Lea, Flood 2014).

    Python's own generator may change between versions, and nothing in `calc` goes by chance.
    """

    def __init__(self, seed: int) -> None:
        self.state = seed & _MASK

    @classmethod
    def of(cls, name: str, number: int) -> "Draw":
        """Return the draw for a `number` of the set `name`: no two sets go alike."""
        seed = number
        for letter in name:
            seed = (seed * 31 + ord(letter)) & _MASK
        return cls(seed)

    def number(self) -> int:
        """Return the next number, from 0 to 2⁶⁴ − 1."""
        self.state = (self.state + 0x9E3779B97F4A7C15) & _MASK
        mixed = self.state
        mixed = ((mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9) & _MASK
        mixed = ((mixed ^ (mixed >> 27)) * 0x94D049BB133111EB) & _MASK
        return mixed ^ (mixed >> 31)

    def pick(self, texts: Sequence[str]) -> str:
        """Return one of `texts`."""
        return texts[self.number() % len(texts)]
