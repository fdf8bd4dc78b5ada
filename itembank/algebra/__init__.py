"""Exact school algebra as it is written: trees, reading, showing, values. Pure."""
