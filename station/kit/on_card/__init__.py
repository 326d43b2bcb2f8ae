"""What runs on the card by the system's own Python, before the station is installed: the standard library alone.

Each file stands for itself; `station kit` copies it into the folder `benchwarm` of the card's boot partition.
"""
