"""Portions of an alkali into an acid: the end-point, both ways."""
