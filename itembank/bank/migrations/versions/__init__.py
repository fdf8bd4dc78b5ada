"""The revisions, one module each, in order."""
