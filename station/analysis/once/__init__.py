"""A cup mixed once: its model, the fit, and the enthalpy per mole."""
