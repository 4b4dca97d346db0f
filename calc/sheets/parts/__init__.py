"""Fields, steps and sentences that several worksheets share."""
