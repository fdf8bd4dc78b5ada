"""Everything known about quadratic equations in one unknown."""
