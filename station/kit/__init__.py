"""Kits: from a table of benches to what each card needs. Knows no page and no bench at work."""
