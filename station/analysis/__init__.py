"""Arrays in, results out: settle, straight lines, the cup model and its fit, repeats, pooling."""
