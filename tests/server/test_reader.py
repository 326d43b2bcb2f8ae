"""A reader gets what no page says for them in the language that the browser asks for."""

import pytest

from station.server.door.reader import reader_language


@pytest.mark.parametrize(
    ("accepted", "language"),
    [
        ("", "en"),
        ("de", "de"),
        ("de-CH,de;q=0.9,en;q=0.8", "de"),
        ("en-GB, de;q=0.9", "en"),
        ("en;q=0.3, DE ; q=0.7", "de"),
        ("tlh, de;q=0.1", "de"),
        ("de;q=0", "en"),
        ("de;q=x, *;q=0.5", "en"),
        ("de;q=nan", "en"),
        ("../../words", "en"),
    ],
)
def test_the_best_liked_language_that_there_is(accepted: str, language: str) -> None:
    assert reader_language(accepted) == language
