"""The graph-paper method: two straight lines of best fit and where they cross."""
