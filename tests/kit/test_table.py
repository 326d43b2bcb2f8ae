"""`kits.toml`: what it may say, and mistakes told with file, line and remedy."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.kit.table import KitError, kits_from, read_kits

TABLE = """\
# Room 4
country = "IE"

[network]
ssid = "Lab"
password = "long enough"

[[kit]]
number = 1
name = "By the window"

[[kit]]
number = 2
network = { ssid = "Other lab" }
"""


def test_what_a_bench_does_not_say_is_the_tables() -> None:
    kits = kits_from(TABLE, "kits.toml")
    first, second = kits.kit
    assert (first.label, first.hostname, second.label) == ("By the window", "bench-1", "Bench 2")
    assert kits.network is not None
    assert kits.network.ssid == "Lab"
    assert second.network is not None
    assert second.network.password is None


def test_a_prefix_tells_two_rooms_apart_and_without_one_names_stay() -> None:
    room = TABLE + "[[kit]]\nnumber = 16\nroom = true\n"
    plain, told = kits_from(room, "kits.toml"), kits_from(f'prefix = "b12"\n{room}', "kits.toml")
    assert [each.hostname for each in plain.kit] == ["bench-1", "bench-2", "room"]
    assert [each.hostname for each in told.kit] == ["b12-bench-1", "b12-bench-2", "b12-room"]
    assert (plain.broker_host, told.broker_host) == ("room.local", "b12-room.local")
    assert [each.label for each in told.kit] == [each.label for each in plain.kit]


@pytest.mark.parametrize("spoil", ["bom", "crlf", "both"])
def test_a_file_from_any_editor_is_read(tmp_path: Path, spoil: str) -> None:
    content = TABLE.replace("\n", "\r\n") if spoil != "bom" else TABLE
    path = tmp_path / "kits.toml"
    path.write_bytes(content.encode("utf-8-sig" if spoil != "crlf" else "utf-8"))
    assert read_kits(path) == kits_from(TABLE, "kits.toml")


@pytest.mark.parametrize(
    ("old", "new", "line", "words"),
    [
        ('ssid = "Lab"', 'ssid = ""', 5, "at least 1"),
        ('password = "long enough"', 'password = "short"', 6, "at least 8"),
        ("number = 2", "number = 1", 13, "number 1 is there twice"),
        ("number = 2", 'number = 2\nname = "by the Window"', 14, "name by the window is there twice"),
        ("number = 2", "number = 0", 13, "greater than or equal to 1"),
        ("number = 2", 'nummer = "x"', 12, r"\[kit 2\] number: missing; add it"),
        ('country = "IE"', 'country = "Ireland"', 2, "match"),
        ('name = "By the window"', 'name = "a name that is far too long"', 10, "at most 24"),
        ('ssid = "Other lab"', 'sid = "Other lab"', 14, "ssid"),
        ('country = "IE"', 'prefix = "Room 12"', 2, "match"),
        ('country = "IE"', 'country = "IE"\nteacher_passphrase = "short"', 3, "characters"),
        ('country = "IE"', 'own_passphrases = true\nteacher_passphrase = "a long passphrase"', 1, "own_passphrases"),
    ],
)
def test_a_mistake_names_the_line(old: str, new: str, line: int, words: str) -> None:
    with pytest.raises(KitError, match=rf"^kits\.toml: line {line}: .*{words}") as told:
        kits_from(TABLE.replace(old, new), "kits.toml")
    assert "\n" not in str(told.value)


def test_a_password_is_never_repeated() -> None:
    with pytest.raises(KitError) as told:
        kits_from(TABLE.replace("long enough", "s3cret"), "kits.toml")
    assert "s3cret" not in str(told.value)


@pytest.mark.fault("wifi-off")
def test_wifi_needs_the_country() -> None:
    with pytest.raises(KitError, match=r'Wi-Fi needs the country, for example country = "IE"'):
        kits_from(TABLE.replace('country = "IE"', ""), "kits.toml")


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"[[kit]\nnumber = 1", "not valid TOML"),
        (b"", "kit"),
        (b"\n\xff\xfe", "line 2: not UTF-8"),
        (b"#" * 300_000, "is it the right file"),
    ],
)
def test_a_file_that_is_no_table_says_so(tmp_path: Path, content: bytes, words: str) -> None:
    path = tmp_path / "kits.toml"
    path.write_bytes(content)
    with pytest.raises(KitError, match=words):
        read_kits(path)


@given(st.text(max_size=200))
def test_any_text_is_a_table_or_one_line_that_says_why_not(text: str) -> None:
    try:
        kits_from(text, "kits.toml")
    except KitError as error:
        assert "\n" not in str(error)


def test_a_password_in_the_wrong_place_is_not_repeated_either() -> None:
    text = 'plan = { ssid = "Lab", password = "long enough" }\n[[kit]]\nnumber = 1\n'
    with pytest.raises(KitError, match=r"plan: input should be a valid string \(got a table\)"):
        kits_from(text, "kits.toml")
