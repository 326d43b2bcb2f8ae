"""Benchwarm: a bench station for temperature-change practicals in school chemistry."""
