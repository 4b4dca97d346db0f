"""Judgements on a van as a whole, a module a subject; `calc.van.review` asks all of them."""
