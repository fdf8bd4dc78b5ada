"""Equations with the unknown below a bar, linear once they are cleared of fractions."""
