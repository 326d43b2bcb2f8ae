"""`station` as it is, but for how much one address may ask: for tests that ask faster than a class."""

import sys

from station.command.main import main
from station.server import serve as connections
from station.server.door.limits import Rate

Rate.wait_s = lambda *_: 0.0  # type: ignore[method-assign]
connections.MOST_OF_ONE = connections.MOST = 900

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
