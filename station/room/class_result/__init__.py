"""The class result: the benches side by side, and what it means."""
