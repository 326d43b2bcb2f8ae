"""Reasons out of the record: there they are English text; the station's own become messages again.

So they are said in every language after a restart too, in the room, and from records of older stations. Words that a
person typed stay as they were typed.
"""

from typing import Final

from station.analysis.probe.dip import NOT_PLUNGED, TOO_NEAR, TOO_SHORT, UNCHANGED
from station.words import say

SAYS: Final = (
    # of the station
    "reason-not-settled",
    "reason-no-reading",
    "settle-time-up-few",
    "settle-few-fresh",
    "settle-time-up",
    "settle-still-drifting",
    "reason-spilled",
    "reason-not-fresh",
    # offered by the page, which sends the text
    "reason-it-spilled",
    "reason-stirred-late",
    "reason-lid-off",
    "reason-lost-count",
    "reason-probe-out",
    "reason-wrong-volume",
    "reason-wrong-moment",
    "reason-wrong-amounts",
    "reason-few-readings",
    "reason-readings-scatter",
    "reason-not-turned",
    "reason-lines-on-paper",
    "reason-off-points",
    "reason-another-way",
    "reason-differs",
)

_OWN: Final = {str(own): own for own in (*map(say, SAYS), UNCHANGED, TOO_SHORT, TOO_NEAR, NOT_PLUNGED)}


def recorded(reason: str) -> str:
    """Return the message that this text of a record is; the text itself where a person typed it."""
    return _OWN.get(reason, reason)
