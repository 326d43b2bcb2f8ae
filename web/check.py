"""Checks the page's sources: types, those of the servers' answers among them, then unit tests.

It takes the Node that the build hook finds.

python -m web.check
"""

import os
import subprocess
import sys
from pathlib import Path

from web.build_hook import find_node
from web.contract import write as write_types

WEB = Path(__file__).parent


def main() -> int:
    """Write the types, run npm's locked install, the check and the tests; the first failure's status is ours."""
    write_types()
    node, npm = find_node()
    environment = {**os.environ, "PATH": os.pathsep.join([str(node.parent), os.environ.get("PATH", "")])}
    for words in (["ci", "--ignore-scripts", "--no-fund", "--no-audit"], ["run", "check"], ["test"]):
        status = subprocess.run([*npm, *words], cwd=WEB, env=environment, check=False).returncode
        if status != 0:
            return status
    return 0


if __name__ == "__main__":
    sys.exit(main())
