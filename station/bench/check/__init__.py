"""The pre-flight of a kit: looks at everything a bench needs, and changes nothing."""
