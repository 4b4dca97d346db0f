"""Worksheets of one chapter."""
