"""What reads a temperature."""
