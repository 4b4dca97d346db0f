"""The judgements of this package: one module a subject, each rule once, found by its id."""
