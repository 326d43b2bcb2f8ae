"""Who may do what: addresses, limits, codes, sessions."""
