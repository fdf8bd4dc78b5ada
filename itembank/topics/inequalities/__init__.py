"""Everything known about linear inequalities in one unknown."""
