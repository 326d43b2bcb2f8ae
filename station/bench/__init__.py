"""The hands: probe, panel, clock, the virtual cup and the loop that carries things between them."""
