"""The command `room`, and what others ask of a room."""
