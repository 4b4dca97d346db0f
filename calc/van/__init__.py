"""One van: a record that feeds every worksheet, reviewed, drawn, scheduled and handed over."""
