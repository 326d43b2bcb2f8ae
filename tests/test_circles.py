"""No circle of modules: none imports, through whatever others, what imports it. Imports for types alone count too."""

from graphlib import CycleError, TopologicalSorter

import grimp
import pytest


def test_no_module_imports_what_imports_it() -> None:
    graph = grimp.build_graph("station", exclude_type_checking_imports=False, cache_dir=None)
    # A package's own file lists what others take from it, so only imports between modules tell of a circle.
    imports = {name: graph.find_modules_directly_imported_by(name) for name in graph.modules}
    assert len(imports) > 200
    try:
        TopologicalSorter(imports).prepare()
    except CycleError as error:
        pytest.fail(f"a circle of modules: {' imports '.join(reversed(error.args[1]))}")
