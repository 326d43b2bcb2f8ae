"""Checks the page's sources: types, then unit tests, with the Node that the build hook finds.

python web/check.py
"""

import os
import subprocess
import sys
from pathlib import Path

from web.build_hook import find_node

WEB = Path(__file__).parent


def main() -> int:
    """Run npm's locked install, the type check and the unit tests; the first failure's status is ours."""
    node, npm = find_node()
    environment = {**os.environ, "PATH": os.pathsep.join([str(node.parent), os.environ.get("PATH", "")])}
    for words in (["ci", "--ignore-scripts", "--no-fund", "--no-audit"], ["run", "check"], ["test"]):
        status = subprocess.run([*npm, *words], cwd=WEB, env=environment, check=False).returncode
        if status != 0:
            return status
    return 0


if __name__ == "__main__":
    sys.exit(main())
