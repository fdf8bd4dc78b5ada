"""Factorising: common factors, difference of two squares, quadratics, grouping."""
