"""The eyes: HTTP, the live stream, access and the built page."""
