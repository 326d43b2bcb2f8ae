"""Results and predictions, computed by the worker's process, so that the daemon carries no numpy."""
