"""Is the marking the same for all? Samples for a second marker."""
