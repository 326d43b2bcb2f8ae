"""Tells on standard output what happens on a bench: as JSON lines for programs, or in words for people."""

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Protocol

from station.bench.loop import Bench
from station.practical import events as e
from station.practical.plan import number
from station.practical.prompts import instruction

METHODS = ("straight_lines", "heat_balance")


class Teller(Protocol):
    """Who tells."""

    def serving(self, url: str, record: Path) -> None:
        """The page is served at this address."""

    def happened(self, stamped: Sequence[e.Stamped]) -> None:
        """These events were kept."""

    def result(self, result: dict[str, Any]) -> None:
        """These are the results."""


class JsonTeller:
    """One JSON object a line; samples are left out, since the record has them."""

    def serving(self, url: str, record: Path) -> None:
        """Tell the address."""
        _line({"kind": "serving", "url": url, "record": str(record)})

    def happened(self, stamped: Sequence[e.Stamped]) -> None:
        """Tell each event but the samples."""
        for each in stamped:
            if not isinstance(each.event, e.SampleTaken):
                _line({"kind": each.event.kind, "seq": each.seq, "time_s": each.time_s, **each.event.to_body()})

    def result(self, result: dict[str, Any]) -> None:
        """Tell the result by each method; the best comes last."""
        for method in METHODS:
            _line(result_line(method, result))


def result_line(method: str, result: dict[str, Any]) -> dict[str, Any]:
    """Return the result by one method as the JSON lines give it."""
    keys = ("end_point_cm3", "u_end_point_cm3", "interval_95_cm3")
    mean = result.get(method) or {}
    repeats = [
        {"repeat": each["repeat"], **{key: (each[method] or {}).get(key) for key in keys}}
        for each in result.get("repeats", [])
    ]
    line = {"kind": "result", "method": method, **{key: mean.get(key) for key in keys}, "repeats": repeats}
    refused = result.get("refused", {}).get(method)
    return line if refused is None else {**line, "refused": refused}


class WordsTeller:
    """Progress for a person: the instruction, each temperature, the crossing."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench

    def serving(self, url: str, record: Path) -> None:
        """Say where the page is."""
        print(f"Open {url} in a browser. Ctrl-C ends.\nThe record is kept in {record} meanwhile.\n", flush=True)

    def happened(self, stamped: Sequence[e.Stamped]) -> None:
        """Say what matters to somebody who looks on."""
        for each in stamped:
            words = self._words(each.event)
            if words:
                minutes, seconds = divmod(int(each.time_s), 60)
                print(f"{minutes:3d}:{seconds:02d}  {words}", flush=True)

    def _words(self, event: e.Event) -> str | None:
        words: str | None = None
        match event:
            case e.AlkaliMeasured(temperature_c=temperature_c):
                words = f"alkali at {temperature_c:.2f} °C"
            case e.RepeatBegun(repeat=repeat):
                words = f"repeat {repeat}: acid in the cup"
            case e.PortionPrompted():
                words = f"→ {instruction(self._bench.state).text}"
            case e.PortionAdded(portion=portion, volume_cm3=volume_cm3):
                words = f"  portion {portion} is in ({number(volume_cm3)} cm³)"
            case e.ReadingSettled(portion=portion, temperature_c=temperature_c) if temperature_c is not None:
                words = f"{_name(portion):>12}  {temperature_c:6.2f} °C  {self._bar(temperature_c)}"
            case e.ProbeLost(bad=bad):
                words = f"the probe gives no reading ({bad})"
            case e.ProbeFound():
                words = "the probe is back"
            case e.RepeatEnded(repeat=repeat):
                words = f"repeat {repeat} has ended"
            case e.PracticalEnded():
                words = "the practical has ended"
        return words

    def _bar(self, temperature_c: float) -> str:
        repeat = self._bench.state.current
        known = [each.temperature_c for each in repeat.readings] if repeat else []
        start_c = next((each for each in known if each is not None), None)
        return "" if start_c is None else "·" * round(10 * abs(temperature_c - start_c))

    def result(self, result: dict[str, Any]) -> None:
        """Say the end-points."""
        print()
        for method in METHODS:
            line = result_line(method, result)
            name = method.replace("_", " ")
            if line["end_point_cm3"] is None:
                print(f"{name}: no end-point. {line.get('refused', '')}", flush=True)
            else:
                low, high = line["interval_95_cm3"]
                print(
                    f"{name}: {line['end_point_cm3']:.2f} ± {line['u_end_point_cm3']:.2f} cm³ "
                    f"(95 %: {low:.2f} to {high:.2f} cm³)",
                    flush=True,
                )


def _name(portion: int) -> str:
    return "start" if portion == 0 else f"portion {portion}"


def _line(values: dict[str, Any]) -> None:
    print(json.dumps(values, ensure_ascii=False), flush=True)
