"""Two liquids, or a weighed solid and a liquid, mixed once."""
