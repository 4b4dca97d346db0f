"""Guided fault finding: the search as data, the healthy circuit to compare with, and the walker.

The JSON files are the search: one file for each symptom, `run`, `main` and `bank` for what
several share,
`ends` for causes and repairs, `criteria` for the limits, `words` for places and settings.
"""
