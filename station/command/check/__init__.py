"""The command `check`: the pre-flight of a kit or a room."""
