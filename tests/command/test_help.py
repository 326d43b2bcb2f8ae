"""`--help` of every command: an example that is understood, and what its exit statuses mean."""

import re
import shlex

import pytest

from station.command.main import COMMANDS, EXAMPLES, _parser, main


@pytest.mark.parametrize("command", COMMANDS)
def test_help_has_an_example_and_exit_statuses(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as end:
        main([command, "--help"])
    assert end.value.code == 0
    told = re.sub(r"\s+", " ", capsys.readouterr().out)
    assert f"example: {EXAMPLES[command]}" in told
    assert "exit status: 0 " in told
    words = shlex.split(EXAMPLES[command].partition(" >> ")[0])[1:]
    assert _parser(words).parse_args(words).command == command, "the example is one"
