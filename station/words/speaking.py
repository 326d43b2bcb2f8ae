"""The language that this process speaks to whoever reads its output."""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from station.words import ENGLISH, in_language, say

_language: ContextVar[str] = ContextVar("language", default=ENGLISH)


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Say everything in this language while it lasts."""
    before = _language.set(language)
    try:
        yield
    finally:
        _language.reset(before)


def current_language() -> str:
    """Return the language that everything is said in now."""
    return _language.get()


def spoken(message: str) -> str:
    """Return what a message says in the language of the settings."""
    return in_language(message, _language.get())


def figure(number: str) -> str:
    """Return a number, written with a point, with the decimal sign of the language."""
    return spoken(say("told-figure", figure=number))
