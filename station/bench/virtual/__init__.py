"""The virtual cup: a world, a probe in it, the one-wire tree it writes, faults and a student's hands."""
