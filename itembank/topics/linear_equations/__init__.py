"""Everything known about linear equations in one unknown."""
