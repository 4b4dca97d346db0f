"""Quantities, kinds and units: what is typed goes in, what is shown comes out."""
