"""Practice without a kit: virtual cups that persons pour into, each served at an address of its own."""
