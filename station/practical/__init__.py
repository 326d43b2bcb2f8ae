"""What should happen next: the plan, the events, the procedure and the prompts."""
