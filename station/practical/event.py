"""What every event is."""

from dataclasses import asdict, dataclass
from typing import Any, ClassVar


@dataclass(frozen=True)
class Event:
    """Base of all events; `kind` is the name in the journal and on the stream."""

    kind: ClassVar[str] = ""

    def to_body(self) -> dict[str, Any]:
        """Return the event's fields as JSON values."""
        return asdict(self)
