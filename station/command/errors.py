"""Exit statuses, and the error that becomes one line for the person who typed the command."""

EXIT_FAILED = 1  # the station's own fault
EXIT_USAGE = 2  # settings, plan, file or argument: the line says what to change
EXIT_ADDRESS = 3  # the address cannot be listened on
EXIT_RECORD = 4  # the record cannot be opened or written


class CommandError(Exception):
    """What the person did wrong, or what is in the way, in one line."""

    def __init__(self, message: str, status: int = EXIT_USAGE) -> None:
        super().__init__(" ".join(message.split()))
        self.status = status
