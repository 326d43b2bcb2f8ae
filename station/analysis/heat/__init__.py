"""The heat balance: the cup model fitted to the whole trace of a repeat."""
