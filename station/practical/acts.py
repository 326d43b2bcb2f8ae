"""Acts: what a person may tell the station, with which words. The same list for button, page and replay."""

from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.practical.problems import in_words
from station.words import Message, say

DIVISIONS_C = (1.0, 0.5, 0.2, 0.1)
"""Of thermometers as schools own them: between two lines of the scale, or the last digit."""
"""Divisions of ordinary thermometers in °C."""

ActName = Literal[
    "begin",
    "alkali_temperature",
    "alkali_left_out",
    "sketch_left_out",
    "probe_rinsed",
    "cup_emptied",
    "cup_rinsed",
    "portion_added",
    "portion_undone",
    "portion_volume",
    "portion_unsure",
    "portion_sure",
    "thermometer",
    "reading",
    "read_now",
    "answer",
    "rinsed",
    "one_more",
    "repeat_restarted",
    "repeat_set_aside",
    "repeat_restored",
    "own_reading",
    "sketch",
    "group",
    "note",
    "note_withdrawn",
    "adopt",
    "adopt_returned",
    "pause",
    "resume",
    "finish",
    "finish_undone",
    "call_teacher",
    "call_over",
]


def _plain(text: str) -> str:
    if not text.isprintable():
        raise ValueError(say("problem-plain-text"))
    return text


def _division(division_c: float) -> float:
    if division_c not in DIVISIONS_C:
        raise ValueError(say("problem-division"))
    return division_c


PLAIN_TEXT = say("refusal-write-plain-text")

Volume = Annotated[
    float,
    Field(ge=0.01, le=1000, allow_inf_nan=False),
    in_words(say("refusal-type-volume")),
]
Mass = Annotated[
    float,
    Field(ge=0.001, le=1000, allow_inf_nan=False),
    in_words(say("refusal-type-mass")),
]
Temperature = Annotated[
    float,
    Field(ge=-5, le=60, allow_inf_nan=False),
    in_words(say("refusal-type-temperature")),
]


MOST_SKETCHED = 100
NO_SKETCH = say("refusal-sketch-empty")
SketchedVolume = Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False)]
"""Total volume added in cm³ at a point of a sketched curve."""


class OwnLine(BaseModel):
    """A line as the students placed it: T = intercept_c + slope_c_cm3 * V."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    slope_c_cm3: Annotated[float, Field(ge=-1000, le=1000, allow_inf_nan=False)]
    intercept_c: Annotated[float, Field(ge=-1e5, le=1e5, allow_inf_nan=False)]


class Act(BaseModel):
    """One act. `key` is chosen by the sender: the same key again changes nothing and gets the same answer.

    `sure`: a value that was refused as `doubtful` is right. `places`: with how many decimals the amount was typed.
    `at_s`: into the repeat, for a temperature that the clock asked for.
    """

    model_config = ConfigDict(extra="forbid", frozen=True)

    act: ActName
    key: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)]
    repeat: Annotated[int, Field(ge=1, le=1000)] | None = None
    portion: Annotated[int, Field(ge=0, le=1000)] | None = None
    volume_cm3: Volume | None = None
    mass_g: Mass | None = None
    places: Annotated[int, Field(ge=0, le=4)] | None = None
    at_s: Annotated[float, Field(ge=0, le=1e6, allow_inf_nan=False)] | None = None
    temperature_c: Temperature | None = None
    question: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)] | None = None
    answer: Annotated[str, Field(min_length=1, max_length=40), AfterValidator(_plain)] | None = None
    sure: bool = False
    reason: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_plain), in_words(PLAIN_TEXT)] | None = (
        None
    )
    division_c: Annotated[float, AfterValidator(_division), in_words(say("refusal-choose-divisions"))] | None = None
    digital: bool = False
    end_point_cm3: (
        Annotated[
            float,
            Field(ge=0, le=1000, allow_inf_nan=False),
            in_words(say("refusal-type-own-volume")),
        ]
        | None
    ) = None
    change_c: (
        Annotated[
            float,
            Field(ge=-65, le=65, allow_inf_nan=False),
            in_words(say("refusal-type-own-change")),
        ]
        | None
    ) = None
    before: OwnLine | None = None
    after: OwnLine | None = None
    points: (
        Annotated[list[tuple[SketchedVolume, Temperature]], Field(max_length=MOST_SKETCHED), in_words(NO_SKETCH)] | None
    ) = None
    label: Annotated[str, Field(max_length=24), AfterValidator(_plain), in_words(PLAIN_TEXT)] | None = None
    text: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_plain), in_words(PLAIN_TEXT)] | None = (
        None
    )
    note: Annotated[int, Field(ge=1, le=100_000)] | None = None
    csv: Annotated[str, Field(max_length=14_000)] | None = None
    by: Literal["page", "button"] = "page"


class ActRefused(Exception):  # noqa: N818 - a refusal is an answer to a person, not a fault of the station
    """The act is impossible now; `code` is for programs, the message for people. Nothing was changed."""

    def __init__(self, code: str, message: Message) -> None:
        super().__init__(message)
        self.code = code
