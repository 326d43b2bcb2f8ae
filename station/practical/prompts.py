"""The one instruction: what a person is asked to do now, in at most twelve words."""

from dataclasses import dataclass

from station.practical.plan import OncePlan
from station.practical.state import State, Step


@dataclass(frozen=True)
class Instruction:
    """What to do. `act` is what the button means now (None: nothing to press), `label` its words."""

    code: str
    text: str
    detail: str | None = None
    act: str | None = None
    portion: int | None = None
    label: str | None = None


_FIRST = "Wear eye protection. Your teacher and your school's risk assessment come first."
_YOU_DECIDE = "You decide; the station only records."


def instruction(state: State) -> Instruction:
    """Return the instruction for this state."""
    if state.probes.check is not None:
        return Instruction("check", "Staff are checking the probe. Please wait.", "Only they can end the check.")
    if state.typed and state.step in _TYPED:
        return _TYPED[state.step](state)
    if state.probe == "lost" and state.step in _NEEDS_PROBE:
        return _without_probe(state)
    if state.plan.own_judgement and state.step in _OWN:
        return _OWN[state.step](state)
    return _INSTRUCTIONS[state.step](state)


def _ready(state: State) -> Instruction:
    detail = _FIRST
    if state.alkali_c is None and state.plan.portion_cm3:
        detail += " First, if you can: dip the rinsed, wiped probe in the " + state.plan.added_name
        detail += " for its temperature."
    return Instruction(
        "begin",
        f"Put {state.plan.in_cup} in the cup. Probe in.",
        detail,
        "begin",
        None,
        "Cup filled, probe in",
    )


def _alkali(state: State) -> Instruction:
    return Instruction(
        "alkali",
        f"Hold the probe still in the {state.plan.added_name}.",
        "The station takes its temperature by itself.",
    )


def _start(state: State) -> Instruction:
    if isinstance(state.plan, OncePlan):
        return Instruction("start", "Wait. Stir gently. The temperature before mixing is recorded.")
    return Instruction("start", "Wait. Stir gently. The start temperature is settling.")


def _pour(state: State) -> Instruction:
    portion = state.prompted or state.poured + 1
    if isinstance(state.plan, OncePlan):
        return Instruction(
            "mix",
            f"Now add all {state.plan.added}. Stir.",
            "Press at the moment of mixing.",
            "portion_added",
            1,
            "It is in",
        )
    return Instruction(
        "pour",
        f"Add portion {portion}: {state.plan.added}. Stir.",
        "Press as soon as it is in.",
        "portion_added",
        portion,
        f"Portion {portion} is in",
    )


def _settle(state: State) -> Instruction:
    if isinstance(state.plan, OncePlan):
        return Instruction("after", "Keep stirring gently. The temperature after mixing is recorded.")
    return Instruction("settle", "Wait. Keep stirring gently. The temperature is settling.")


def _rinse(state: State) -> Instruction:
    return Instruction(
        "rinse",
        f"Rinse cup and probe. Refill: {state.plan.in_cup}.",
        "Wipe the probe. Refill from the same bottle.",
        "rinsed",
        None,
        "Rinsed and refilled",
    )


def _paused(_: State) -> Instruction:
    return Instruction(
        "paused", "Paused. Press to go on.", "The temperature is still recorded.", "resume", None, "Go on"
    )


def _done(_: State) -> Instruction:
    return Instruction(
        "done",
        "Finished. Rinse cup and probe, clear up, wash your hands.",
        "Pour the mixture away as your school's rules say.",
    )


def _without_probe(state: State) -> Instruction:
    bad = state.recent[-1].bad if state.recent else None
    if bad == "several":
        return Instruction(
            "probe_lost",
            "Several probes are plugged in. Unplug all but one.",
            "Or write the number of this bench's probe as probe.id in station.toml.",
        )
    if bad == "other_probe":
        return Instruction(
            "probe_lost",
            "Another probe is plugged in. Plug in this bench's own.",
            "To keep the new one, restart the station. If its settings name a probe, change probe.id first.",
        )
    return Instruction(
        "probe_lost",
        "No reading from the probe. Check its plug; call your teacher.",
        "Nothing is lost. After plugging in it can take about 15 seconds to answer.",
    )


def _ready_to_type(state: State) -> Instruction:
    if state.thermometer_division_c is None:
        return Instruction(
            "thermometer",
            "Choose the divisions of your thermometer.",
            "Look at its scale: how far apart are two neighbouring lines?",
        )
    return Instruction(
        "begin",
        f"Put {state.plan.in_cup} in the cup. Thermometer in.",
        _FIRST,
        "begin",
        None,
        "Cup filled, thermometer in",
    )


def _type_reading(state: State) -> Instruction:
    return Instruction(
        "type_start" if state.step is Step.START else "type_reading",
        "Stir. Wait until it is steady. Type the temperature.",
        "Read at eye level, the tip in the middle of the liquid.",
        portion=state.poured,
    )


def _own_reading_now(state: State) -> Instruction:
    return Instruction(
        "own_start" if state.step is Step.START else "own_reading_now",
        "Stir. Read now when you judge the temperature steady.",
        _YOU_DECIDE,
        "read_now",
        state.poured,
        "Read now",
    )


def _own_pour(state: State) -> Instruction:
    portion = state.poured + 1
    what = "all " if isinstance(state.plan, OncePlan) else f"portion {portion}: "
    return Instruction(
        "own_pour",
        f"Add {what}{state.plan.added} when you choose. Stir.",
        _YOU_DECIDE,
        "portion_added",
        portion,
        "It is in" if isinstance(state.plan, OncePlan) else f"Portion {portion} is in",
    )


_TYPED = {Step.READY: _ready_to_type, Step.START: _type_reading, Step.SETTLE: _type_reading}
_OWN = {Step.START: _own_reading_now, Step.POUR: _own_pour, Step.SETTLE: _own_reading_now}

_NEEDS_PROBE = frozenset({Step.ALKALI, Step.START, Step.SETTLE})

_INSTRUCTIONS = {
    Step.READY: _ready,
    Step.ALKALI: _alkali,
    Step.START: _start,
    Step.POUR: _pour,
    Step.SETTLE: _settle,
    Step.RINSE: _rinse,
    Step.PAUSED: _paused,
    Step.DONE: _done,
}
