"""Good input of every kind, to be spoilt."""

import json
import sqlite3
import zlib
from contextlib import closing
from functools import cache
from pathlib import Path

from station.practical import events as e
from station.practical.kinds import read_plan
from station.record.journal import FILE_NAME, Journal, Moment
from station.room.wire import Row, packed_batch
from tests.bench.one_wire_rig import good
from tests.records import PLAN, PLAN_TEXT, record
from tests.server.doors import GIVEN, SECRETS

SECRET = "Ysgol-Glas-77"
ACCESS = SECRETS
PROBE = [good(raw).encode() for raw in (336, 337, 0x0550, 0x07FF, -16)] + [b"", b"\n"]

_RECORD = record(1, repeats=2, hold_s=6, portions=3).csv.encode()
CSV = [
    _RECORD,
    b"repeat,volume_cm3,temperature_c\r\n1,0,20.5\r\n1,3,21.25\r\n1,6,22\r\n1,9,21.5\r\n2,0,20\r\n2,3,21\r\n",
    b"repeat,volume_cm3,temperature_c\n1,0,20\n",
]
PLANS = [
    PLAN_TEXT.encode(),
    PLAN.format(u_volume_cm3=0.1).encode(),
    b"""kind = "once"
title = "Cold pack"
[liquid]
name = "water"
volume_cm3 = 50.0
[addition]
name = "potassium chloride"
mass_g = 4.00
[timing]
before_s = 120
after_s = 300
""",
    b"""pace = "quick"
prompts = "own judgement"
results = "when shown"
repeats = 3
[acid]
name = "sulfuric acid"
volume_cm3 = 20
prepared_mol_dm3 = 0.2
u_volume_cm3 = 0.05
[alkali]
name = "sodium hydroxide"
concentration_mol_dm3 = 0.5
temperature_c = 21
[portions]
volume_cm3 = 2
count = 20
glassware = "burette"
[cup]
heat_capacity_j_k = 6
u_heat_capacity_j_k = 2
[surroundings]
room_c = 20
""",
]
SETTINGS = [
    f"""plan = "plan.toml"
[bench]
name = "Bench 1"
[probe]
driver = "one-wire"
id = "28-0316a2795fee"
tree = "/sys/bus/w1/devices"
[panel]
pins = "none"
silent = false
wait_gpio = 17
[server]
host = "0.0.0.0"
port = 8080
[record]
folder = "record"
[page]
language = "de"
units = "mL"
[access]
bench_code = "{SECRET}"
names = ["bench-1.example"]
""".encode(),
    b'[probe]\ndriver = "virtual"\n[virtual]\nspeed = 30.0\nseed = 4\nfaults = "power_on@30+5, random 30 %"\n',
]
KITS = [
    f"""country = "IE"
network = {{ ssid = "Lab", password = "{SECRET}" }}
plan = "plan.toml"
panel = "real"
[[kit]]
number = 1
name = "By the window"
[[kit]]
number = 2
probe_id = "28-0316a2795fee"
network = {{ ssid = "Other", password = "{SECRET}", hidden = true }}
""".encode()
]

_ACTS: list[dict[str, object]] = [
    {"act": "begin"},
    {"act": "alkali_temperature", "temperature_c": 20.5},
    {"act": "thermometer", "division_c": 0.1},
    {"act": "reading", "temperature_c": 21.3, "portion": 1},
    {"act": "portion_added", "portion": 1},
    {"act": "portion_added", "portion": 2, "volume_cm3": 4.5},
    {"act": "portion_undone", "portion": 1},
    {"act": "portion_volume", "portion": 1, "volume_cm3": 3.5},
    {"act": "portion_unsure", "portion": 1, "reason": "spilt"},
    {"act": "answer", "question": "1-1-no_change", "answer": "not sure"},
    {"act": "repeat_restarted", "reason": "spilt"},
    {"act": "rinsed"},
    {"act": "pause"},
    {"act": "resume"},
    {"act": "finish"},
    {"act": "one_more"},
    {"act": "sketch", "points": [[0, 20], [4, 22.5], [8, 21]]},
    {"act": "own_reading", "end_point_cm3": 24.5, "before": {"slope_c_cm3": 0.2, "intercept_c": 20}},
    {"act": "group", "label": "Group 4"},
    {"act": "note", "text": "<img src=x onerror=alert(1)>", "repeat": 1, "portion": 2},
    {"act": "note_withdrawn", "note": 1},
    {"act": "adopt", "label": "=1+1", "csv": CSV[1].decode()},
    {"act": "adopt_returned"},
    {"act": "set_aside", "repeat": 1, "reason": "warm cup"},
    {"act": "quiet", "silent": True},
    {"act": "rename", "name": "By the door"},
    {"act": "show_results", "shown": True},
]
ACTS = [json.dumps({**act, "key": f"key {number}"}).encode() for number, act in enumerate(_ACTS * 2)]
ACTS += [json.dumps(credential).encode() for credential in GIVEN.values()]
NEW_PLAN = json.dumps({"act": "choose_plan", "plan_toml": PLAN.format(u_volume_cm3=0.1)}).encode()


@cache
def mqtt() -> tuple[bytes, ...]:
    """Messages of a bench to its room."""
    journal, kit = "0123456789abcdef", "fedcba9876543210"
    events: list[e.Event] = [e.PlanChosen(read_plan(PLAN_TEXT).model_dump(mode="json")), e.RepeatBegun(1)]
    events += [e.SampleTaken(20.0 + number / 16) for number in range(6)]
    events += [e.PortionAdded(1, 1, 4.0, key="a"), e.ReadingSettled(1, 1, 21.0, 0.03, True)]
    rows: list[Row] = [
        (seq, "boot", float(seq), float(seq), "2031-02-03", "none", event.kind, json.dumps(event.to_body()))
        for seq, event in enumerate(events, 1)
    ]
    whole = {"journal": journal, "kit": kit, "events": [[*row[:7], json.loads(row[7])] for row in rows]}
    here = {"journal": journal, "kit": kit, "name": "Bench 1", "addresses": ["http://10.0.0.7:8080/"], "last_seq": 9}
    live = {"kit": kit, "temperature_c": 21.5}
    plain = [json.dumps(each).encode() for each in (whole, {**whole, "events": whole["events"][2:5]}, here, live)]
    return (*plain, packed_batch(journal, kit, rows), zlib.compress(plain[0]), zlib.compress(b"[" * 900_000))


def at(time_s: float) -> Moment:
    """The moment of an event."""
    return Moment("boot", time_s, time_s, "2031-02-03T10:00:00+00:00", "none")


def journal(folder: Path) -> tuple[bytes, bytes, set[tuple[str, str]]]:
    """Return the bytes of a small record and of its log, and what was written."""
    events: list[e.Event] = [e.StationStarted("0", "one-wire", None, "none")]
    for repeat in (1, 2):
        events.append(e.RepeatBegun(repeat))
        for portion in range(4):
            if portion:
                events.append(e.PortionAdded(repeat, portion, 4.0, key=f"{repeat} {portion}"))
            events += [e.SampleTaken(20.0 + number / 16) for number in range(40)]
            events.append(e.ReadingSettled(repeat, portion, 20.0 + portion, 0.03, True))
    journal = Journal(folder)
    half = len(events) // 2
    journal.append([(at(float(number)), event) for number, event in enumerate(events[:half])]).result()
    journal._file.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    with closing(sqlite3.connect(folder / FILE_NAME, isolation_level=None)) as reader:
        reader.execute("BEGIN")
        reader.execute("SELECT count(*) FROM events").fetchone()  # as long as somebody reads, all stays in the log
        for number, event in enumerate(events[half:], half):
            journal.append([(at(float(number)), event)]).result()
    file, wal = ((folder / f"{FILE_NAME}{suffix}").read_bytes() for suffix in ("", "-wal"))
    journal.close()
    return file, wal, {(event.kind, json.dumps(event.to_body())) for event in events}
