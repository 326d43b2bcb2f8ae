"""What a practical will give, from its plan alone."""
