"""What the room keeps, in SQLite."""
