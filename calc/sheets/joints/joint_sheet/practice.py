"""Practice for joint-sheet."""

from calc.practice.declared import Practice

PRACTICE = Practice.none(
    "The joint sheet is a list to fill in and print, so it has no questions. Its calculations are those of joint torque: practise there."
)
