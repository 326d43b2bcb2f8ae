"""The language of whoever reads a page that is not the built one, which knows its reader's language itself."""

from station.words import languages

_DEFAULT = "en"


def reader_language(accepted: str) -> str:
    """Return the language that an `Accept-Language` likes best (RFC 9110, 12.5.4) and a catalogue has; else English."""
    liked: list[tuple[float, str]] = []
    for each in accepted.split(","):
        tag, _, weight = each.partition(";")
        code = tag.strip().lower().partition("-")[0]
        if code in languages():
            liked.append((_weight(weight), code))
    best = max(liked, key=lambda one: one[0], default=(0.0, _DEFAULT))
    return best[1] if best[0] > 0.0 else _DEFAULT


def _weight(text: str) -> float:
    """Return the number in `q=0.8`; 1 where nothing stands there, 0 for what is none."""
    name, _, number = text.strip().partition("=")
    if not name:
        return 1.0
    try:
        return min(float(number), 1.0) if name.strip().lower() == "q" else 0.0
    except ValueError:
        return 0.0
