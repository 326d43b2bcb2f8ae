"""Acts: what a person may tell the station, with which words. The same list for button, page and replay."""

from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

DIVISIONS_C = (1.0, 0.1)
"""Divisions of ordinary thermometers in °C."""

ActName = Literal[
    "begin",
    "alkali_temperature",
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
    "repeat_restarted",
    "repeat_set_aside",
    "repeat_restored",
    "own_reading",
    "group",
    "note",
    "note_withdrawn",
    "adopt",
    "adopt_returned",
    "pause",
    "resume",
    "finish",
]


def _plain(text: str) -> str:
    if not text.isprintable():
        raise ValueError("must be plain text without control characters")
    return text


def _division(division_c: float) -> float:
    if division_c not in DIVISIONS_C:
        raise ValueError("must be 1 or 0.1")
    return division_c


class OwnLine(BaseModel):
    """A line as the students placed it: T = intercept_c + slope_c_cm3 * V."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    slope_c_cm3: Annotated[float, Field(ge=-1000, le=1000, allow_inf_nan=False)]
    intercept_c: Annotated[float, Field(ge=-1e5, le=1e5, allow_inf_nan=False)]


class Act(BaseModel):
    """One act. `key` is chosen by the sender: the same key again changes nothing and gets the same answer."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    act: ActName
    key: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)]
    repeat: Annotated[int, Field(ge=1, le=1000)] | None = None
    portion: Annotated[int, Field(ge=0, le=1000)] | None = None
    volume_cm3: Annotated[float, Field(gt=0, le=1000, allow_inf_nan=False)] | None = None
    temperature_c: Annotated[float, Field(ge=-5, le=60, allow_inf_nan=False)] | None = None
    question: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)] | None = None
    answer: Annotated[str, Field(min_length=1, max_length=40), AfterValidator(_plain)] | None = None
    reason: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_plain)] | None = None
    division_c: Annotated[float, AfterValidator(_division)] | None = None
    end_point_cm3: Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False)] | None = None
    change_c: Annotated[float, Field(ge=-100, le=100, allow_inf_nan=False)] | None = None
    before: OwnLine | None = None
    after: OwnLine | None = None
    label: Annotated[str, Field(max_length=24), AfterValidator(_plain)] | None = None
    text: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_plain)] | None = None
    note: Annotated[int, Field(ge=1, le=100_000)] | None = None
    csv: Annotated[str, Field(max_length=14_000)] | None = None
    by: Literal["page", "button"] = "page"


class ActRefused(Exception):  # noqa: N818 - a refusal is an answer to a person, not a fault of the station
    """The act is impossible now; `code` is for programs, the message for people. Nothing was changed."""

    def __init__(self, code: str, message: str) -> None:
        super().__init__(message)
        self.code = code
