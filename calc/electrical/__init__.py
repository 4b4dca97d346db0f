"""Conductors, voltage drop, ampacity, fuses and joints."""
