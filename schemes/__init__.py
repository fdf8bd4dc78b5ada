"""How it is marked: schemes, explanations of working, marks, scripts."""
