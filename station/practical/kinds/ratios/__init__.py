"""Mixing ratios at a constant total volume: many mixtures of an acid and an alkali, each mixed once."""
