"""Loads and batteries."""
