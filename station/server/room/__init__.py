"""The server of a room with many benches."""
