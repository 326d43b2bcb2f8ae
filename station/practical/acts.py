"""Acts: what a person may tell the station, with which words. The same list for button, page and replay."""

from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

ActName = Literal[
    "begin",
    "alkali_temperature",
    "portion_added",
    "portion_undone",
    "portion_volume",
    "portion_unsure",
    "answer",
    "rinsed",
    "repeat_restarted",
    "pause",
    "resume",
    "finish",
]


def _plain(text: str) -> str:
    if not text.isprintable():
        raise ValueError("must be plain text without control characters")
    return text


class Act(BaseModel):
    """One act. `key` is chosen by the sender: the same key again changes nothing and gets the same answer."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    act: ActName
    key: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)]
    repeat: Annotated[int, Field(ge=1, le=1000)] | None = None
    portion: Annotated[int, Field(ge=1, le=1000)] | None = None
    volume_cm3: Annotated[float, Field(gt=0, le=1000, allow_inf_nan=False)] | None = None
    temperature_c: Annotated[float, Field(ge=-5, le=60, allow_inf_nan=False)] | None = None
    question: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)] | None = None
    answer: Annotated[str, Field(min_length=1, max_length=40), AfterValidator(_plain)] | None = None
    reason: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_plain)] | None = None
    by: Literal["page", "button"] = "page"


class ActRefused(Exception):  # noqa: N818 - a refusal is an answer to a person, not a fault of the station
    """The act is impossible now; `code` is for programs, the message for people. Nothing was changed."""

    def __init__(self, code: str, message: str) -> None:
        super().__init__(message)
        self.code = code
