"""Tells on standard output what happens on a bench: as JSON lines for programs, or in words for people."""

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, Protocol

from station.bench.loop import Bench
from station.command.words import method_in_words
from station.practical import events as e
from station.practical.kinds.kind import METHOD_NAMES
from station.practical.plan import number
from station.practical.prompts import instruction
from station.words import plain, say
from station.words.speaking import figure, spoken


class Teller(Protocol):
    """Who tells."""

    def serving(self, url: str, record: Path) -> None:
        """The page is served at this address."""

    def happened(self, stamped: Sequence[e.Stamped]) -> None:
        """These events were kept."""

    def result(self, result: Mapping[str, Any]) -> None:
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

    def result(self, result: Mapping[str, Any]) -> None:
        """Tell the result by each method; the best comes last."""
        for method in METHOD_NAMES:
            _line(result_line(method, result))


def result_line(method: str, result: Mapping[str, Any]) -> dict[str, Any]:
    """Return the result by one method as the JSON lines give it."""
    mean = result.get(method) or {}
    once = "change_c" in mean
    keys = _OF_CHANGE if once else ("end_point_cm3", "u_end_point_cm3", "interval_95_cm3")
    repeats = [
        {"repeat": each["repeat"], **{key: (each[method] or {}).get(key) for key in keys}}
        for each in result.get("repeats", [])
    ]
    line = {"kind": "result", "method": method, **{key: mean.get(key) for key in keys}, "repeats": repeats}
    refused = result.get("refused", {}).get(method)
    return line if refused is None else {**line, "refused": refused}


_OF_CHANGE = ("change_c", "u_change_c", "interval_95_c", "enthalpy_kj_mol", "u_enthalpy_kj_mol")


class WordsTeller:
    """Progress for a person: the instruction, each temperature, the crossing."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench

    def serving(self, url: str, record: Path) -> None:
        """Say where the page is."""
        print(spoken(say("told-open", address=url)))
        print(f"{spoken(say('told-record-kept', path=str(record)))}\n", flush=True)

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
                words = spoken(say("told-alkali", temperature_c=f"{temperature_c:.2f}"))
            case e.RepeatBegun(repeat=repeat):
                words = spoken(say("told-repeat-begun", repeat=repeat))
            case e.PortionPrompted():
                words = f"→ {spoken(instruction(self._bench.state).text)}"
            case e.PortionAdded(portion=portion, volume_cm3=volume_cm3):
                words = f"  {spoken(say('told-portion-in', portion=portion, volume_cm3=number(volume_cm3)))}"
            case e.ReadingSettled(portion=portion, temperature_c=temperature_c) if temperature_c is not None:
                celsius = figure(f"{temperature_c:.2f}")
                words = f"{_name(portion):>12}  {celsius:>6} °C  {self._bar(temperature_c)}"
            case e.ProbeLost(bad=bad):
                words = spoken(say("told-probe-lost", reason=bad))
            case e.ProbeFound():
                words = spoken(say("told-probe-found"))
            case e.RepeatEnded(repeat=repeat):
                words = spoken(say("told-repeat-ended", repeat=repeat))
            case e.PracticalEnded():
                words = spoken(say("told-practical-ended"))
        return words

    def _bar(self, temperature_c: float) -> str:
        repeat = self._bench.state.current
        known = [each.temperature_c for each in repeat.readings] if repeat else []
        start_c = next((each for each in known if each is not None), None)
        return "" if start_c is None else "·" * round(10 * abs(temperature_c - start_c))

    def result(self, result: Mapping[str, Any]) -> None:
        """Say the end-points, or the changes of temperature."""
        print()
        for method in METHOD_NAMES:
            if "change_c" in (result.get(method) or {}):
                print(f"{spoken(METHOD_NAMES[method])}: {spoken(method_in_words(method, result))}", flush=True)
                continue
            line, name = result_line(method, result), METHOD_NAMES[method]
            if line["end_point_cm3"] is None:
                told = say("told-no-end-point", method=name, reason=line.get("refused", plain("")))
            else:
                low, high = line["interval_95_cm3"]
                told = say(
                    "told-end-point",
                    method=name,
                    end_point_cm3=f"{line['end_point_cm3']:.2f}",
                    u_cm3=f"{line['u_end_point_cm3']:.2f}",
                    low_cm3=f"{low:.2f}",
                    high_cm3=f"{high:.2f}",
                )
            print(spoken(told), flush=True)


def _name(portion: int) -> str:
    return spoken(say("told-start") if portion == 0 else say("portion-number", portion=portion))


def _line(values: dict[str, Any]) -> None:
    print(json.dumps(values, ensure_ascii=False), flush=True)
