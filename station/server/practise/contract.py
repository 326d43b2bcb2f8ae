"""What a practice cup answers besides what every bench does."""

from typing_extensions import TypedDict

from station.bench.virtual.hands import HandsShown
from station.bench.virtual.technique import TechniqueShown


class Practice(TypedDict):
    """The virtual cup in its person's hands; `judgement` is null until the results are shown at the end."""

    hands: HandsShown
    judgement: TechniqueShown | None
