"""A bench's side of the link to the room."""
