"""When the probe has settled after a portion, and on what temperature."""
