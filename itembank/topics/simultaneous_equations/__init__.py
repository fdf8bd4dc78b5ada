"""Everything known about two linear equations in two unknowns."""
