"""Everything known about expressions in one letter to expand and collect."""
