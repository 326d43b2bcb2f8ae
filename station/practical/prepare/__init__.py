"""A plan made ready for a class: what it needs (`amounts`), and the sheet that says so (`sheet`)."""
