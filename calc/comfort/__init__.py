"""Heat, cold, air and water aboard."""
