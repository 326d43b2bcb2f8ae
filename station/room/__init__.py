"""Many benches: the link to the broker, the collector and its store. Knows no page."""
