"""Checks of a probe or a cup by staff: the steps, the register, the correction in use."""
