"""A bench without a probe: temperatures are typed from an ordinary thermometer."""

from station.bench.reading import Deliver


class NoProbe:
    """Gives no reading at all. Chosen by name in the settings, never by falling back."""

    @property
    def probe_id(self) -> str | None:
        """There is no probe."""
        return None

    def start(self, deliver: Deliver) -> None:
        """Begin to give nothing."""

    def close(self) -> None:
        """Nothing to let go."""
