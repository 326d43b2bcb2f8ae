"""Reagents, heat capacities and enthalpies: facts and arithmetic, knowing nothing else of the station."""
