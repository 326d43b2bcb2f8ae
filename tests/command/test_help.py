"""`--help` of every command: an example that is understood, the default of each option, what exit statuses mean."""

import argparse
import re
import shlex

import pytest

from station.command.helping import STATUSES
from station.command.main import COMMANDS, main, parser_of


def parser_for(command: str) -> argparse.ArgumentParser:
    (of_commands,) = [each.choices for each in parser_of([command])._actions if isinstance(each.choices, dict)]
    parser = of_commands[command]
    assert isinstance(parser, argparse.ArgumentParser)
    return parser


def told_by(command: str, capsys: pytest.CaptureFixture[str]) -> str:
    with pytest.raises(SystemExit) as end:
        main([command, "--help"])
    assert end.value.code == 0
    return re.sub(r"\s+", " ", capsys.readouterr().out)


@pytest.mark.parametrize("command", COMMANDS)
def test_help_has_an_example_that_is_one(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    example = parser_for(command).get_default("example")
    assert f"example: station {example}" in told_by(command, capsys)
    words = shlex.split(example.partition(" > ")[0])
    assert parser_of(words).parse_args(words).command == command


@pytest.mark.parametrize("command", COMMANDS)
def test_help_says_what_every_exit_status_means(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    told = told_by(command, capsys).partition("exit status: ")[2]
    statuses = [int(each) for each in re.findall(r"(?:^|, )(\d) \w", told)]
    assert statuses == sorted(set(statuses))
    assert statuses[:3] == [0, 1, 2]
    assert set(statuses) <= set(STATUSES)


@pytest.mark.parametrize("command", COMMANDS)
def test_help_says_the_default_of_every_option(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    told = told_by(command, capsys).partition(" options: ")[2].partition(" example: ")[0]
    for action in parser_for(command)._actions:
        if action.nargs == 0 or action.required:  # a switch is off without it
            continue
        choices = "{" + ",".join(action.choices or ()) + "}"
        name = action.option_strings[-1] if action.option_strings else action.metavar or choices
        part = told_by(command, capsys).partition(" options: ")[0].rpartition(f" {name} ")[2]
        if action.option_strings:
            part = told.partition(f" {name} ")[2]
        assert "(default: " in part.partition(" --")[0], f"{command} {name}"
        if isinstance(action.default, int | float):
            assert f"(default: {action.default})" in part
