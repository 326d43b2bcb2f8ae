"""The server of one bench."""
