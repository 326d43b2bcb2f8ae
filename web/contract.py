"""Writes the page's types from what the servers' OpenAPI documents say of their answers and streams.

python -m web.contract            writes web/src/live/contract.generated.d.ts; `web/check.py` does so before it checks
python -m web.contract --document prints both documents
"""

import json
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from textwrap import wrap
from typing import Any

from station.bench.clock import Clock
from station.bench.loop import Bench
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins
from station.bench.probes.probe import NoProbe
from station.bench.virtual.cup import CupParameters
from station.bench.virtual.driver import VirtualDriver
from station.practical.events.bench import StationStarted
from station.record.journal import Journal
from station.room.broker import PrivateBroker
from station.room.collector import Collector
from station.room.store.store import RoomStore
from station.room.wire import BrokerAddress
from station.server.bare_app import bare_app
from station.server.bench.app import make_app
from station.server.bench.watch import Watch
from station.server.door.access import Access
from station.server.practise.cup import Cup, add_hands
from station.server.room.app import add_rehearsal, make_room_app
from station.server.room.desk import RoomDesk

Json = dict[str, Any]

GENERATED = Path(__file__).parent / "src" / "live" / "contract.generated.d.ts"
HEAD = "// Written by web/contract.py from the OpenAPI documents of bench and room. Not kept in the repository.\n"
WIDTH = 110


def documents() -> list[Json]:
    """Return the documents of a bench, of a room and of a practice cup."""
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench.opened(
            Journal(Path(folder)), Clock.started(None), NoProbe(), open_panel("none", PanelPins(), lambda: None)
        )
        store = RoomStore(Path(folder) / "room")
        try:
            watch = Watch(bench, {"name": "", "virtual": False, "panel": "none"})
            desk = RoomDesk(store, Collector(store, BrokerAddress("")))
            room = make_room_app(desk, "0", Access())
            add_rehearsal(room, PrivateBroker(Path(folder)))
            driver = VirtualDriver(Path(folder) / "devices", CupParameters())
            started = StationStarted("0", "virtual", None, "none")
            practice = bare_app("practice", "0", Access())  # what a practice cup has besides what every bench has
            add_hands(practice, Cup(watch, driver, lambda: bench.state.plan, started, driver.close))
            return [make_app(watch, "0").openapi(), room.openapi(), practice.openapi()]
        finally:
            store.close()
            bench.close()


def typescript(schemas: Json) -> str:
    """Return these schemas, by name, as TypeScript."""
    return HEAD + "".join(_declared(name, schemas[name]) for name in sorted(schemas))


def merged(found: list[Json]) -> Json:
    """Return the components of all documents by name. Raises ValueError where two of a name differ."""
    schemas: Json = {}
    for document in found:
        for name, schema in document["components"]["schemas"].items():
            if schemas.setdefault(name, schema) != schema:
                raise ValueError(f"two shapes are called {name}")
    return schemas


def _declared(name: str, schema: Json) -> str:
    said = _comment(schema.get("description", ""), "")
    if set(schema) & {"properties"} and schema.get("type") == "object":
        return f"\n{said}export interface {name} {{\n{''.join(_members(schema))}}}\n"
    return f"\n{said}export type {name} = {_type(schema)};\n"


def _members(schema: Json) -> Iterator[str]:
    required = schema.get("required", [])
    for name, each in schema["properties"].items():
        perhaps = "" if name in required else "?"
        yield f"{_comment(each.get('description', ''), '  ')}  {name}{perhaps}: {_type(each)};\n"


def _comment(text: str, indent: str) -> str:
    lines = [line for part in text.splitlines() for line in wrap(part, WIDTH) or [""]]
    if len(lines) < 2:
        return f"{indent}/** {lines[0]} */\n" if lines else ""
    return f"{indent}/**\n" + "".join(f"{indent} * {line}".rstrip() + "\n" for line in lines) + f"{indent} */\n"


def _type(schema: Json) -> str:
    for how, sign in (("anyOf", " | "), ("oneOf", " | "), ("allOf", " & ")):
        if how in schema:
            return sign.join(dict.fromkeys(_part(each, sign) for each in schema[how]))
    if "$ref" in schema:
        return str(schema["$ref"]).rpartition("/")[2]
    if "const" in schema or "enum" in schema:
        return " | ".join(json.dumps(each) for each in schema.get("enum", [schema.get("const")]))
    several = {"array": _array, "object": _object}.get(schema.get("type", ""))
    return _SIMPLE.get(schema.get("type", ""), "unknown") if several is None else several(schema)


def _array(schema: Json) -> str:
    if "prefixItems" in schema:
        return f"readonly [{', '.join(map(_type, schema['prefixItems']))}]"
    return f"readonly {_part(schema.get('items', {}), '[]')}[]"


def _part(schema: Json, sign: str) -> str:
    """A type as part of another, in brackets where it has to be."""
    made = _type(schema)
    loose = (" | " in made and sign != " | ") or (sign == "[]" and made.startswith("readonly"))
    return f"({made})" if loose else made


def _object(schema: Json) -> str:
    if "properties" in schema:
        return f"{{\n{''.join(_members(schema))}}}"
    rest = schema.get("additionalProperties", True)
    return f"Readonly<Record<string, {_type(rest) if isinstance(rest, dict) else 'unknown'}>>"


_SIMPLE = {"string": "string", "number": "number", "integer": "number", "boolean": "boolean", "null": "null"}


def write() -> None:
    """Write the types, where they are not as they stand already."""
    made = typescript(merged(documents()))
    if not GENERATED.is_file() or GENERATED.read_text(encoding="utf-8") != made:
        GENERATED.write_text(made, encoding="utf-8")


if __name__ == "__main__":
    if "--document" in sys.argv:
        print(json.dumps(dict(zip(("bench", "room"), documents(), strict=True)), ensure_ascii=False, indent=1))
    else:
        write()
