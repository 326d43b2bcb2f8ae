"""Checks of a probe and a cup: correction, response to a dip, heat capacity of the cup."""
