"""The command `rehearse`: a room of virtual benches."""
