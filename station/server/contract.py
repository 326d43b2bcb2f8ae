"""What the OpenAPI document says of answers: each endpoint's return annotation is the contract.

An annotation is a typed dictionary, or several, perhaps beside `Response` for a refusal; or `Annotated[Response, …]`
with the messages of a live stream. Nothing is checked at an answer and nothing of this is made before somebody asks for
the document: the tests hold real answers against it.
"""

import inspect
import types
from collections.abc import Callable, Iterable
from typing import Annotated, Any, Final, Union, get_args, get_origin

from fastapi import FastAPI
from fastapi.routing import APIRoute
from pydantic import TypeAdapter
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from typing_extensions import TypedDict, is_typeddict

from station.words import said

PLACE: Final = "#/components/schemas/{model}"


class MessageParts(TypedDict):
    """A message of the catalogues: its id, and its values (numbers, texts, and messages of their own with a text)."""

    id: str
    values: dict[str, Any]


class Told(TypedDict):
    """Beside every answer: id and values of each text in it that is a message, by the text."""

    messages: dict[str, MessageParts]


def shapes_of(endpoint: Callable[..., Any]) -> tuple[tuple[Any, ...], tuple[Any, ...]]:
    """Return the typed dictionaries that an endpoint answers with, and those that its stream sends."""
    annotation = inspect.signature(endpoint).return_annotation
    if get_origin(annotation) is Annotated:
        return (), _parts(get_args(annotation)[1])
    return tuple(each for each in _parts(annotation) if is_typeddict(each)), ()


def _parts(annotation: Any) -> tuple[Any, ...]:
    return get_args(annotation) if get_origin(annotation) in (Union, types.UnionType) else (annotation,)


class _Shapes(GenerateJsonSchema):
    """Schemas of values as answers have them: a message is its English text there."""

    def generate_inner(self, schema: Any) -> JsonSchemaValue:
        """Return the schema of one part."""
        if schema["type"] == "function-plain" and schema["function"]["function"] is said:
            return {"type": "string"}
        return super().generate_inner(schema)

    def field_is_required(self, field: Any, total: bool) -> bool:
        """Return whether it is in every answer: what has a default is written out too."""
        return super().field_is_required(field, total) if field["type"] == "typed-dict-field" else True


class Described(FastAPI):
    """An application whose document tells the shapes of all answers and of what its streams send."""

    _told: object = None

    def openapi(self) -> dict[str, Any]:
        """Return the document; it is made when it is first asked for."""
        found = super().openapi()
        if found is not self._told:
            _add_shapes(found, [route for route in self.routes if isinstance(route, APIRoute)])
            self._told = found
        return found


def _add_shapes(found: dict[str, Any], routes: Iterable[APIRoute]) -> None:
    told = [(route, *shapes_of(route.endpoint)) for route in routes if route.include_in_schema]
    shapes = dict.fromkeys([Told, *(shape for _, answers, sent in told for shape in (*answers, *sent))])
    references, components = _schemas(list(shapes))
    found.setdefault("components", {}).setdefault("schemas", {}).update(components)
    for route, answers, sent in told:
        for method in route.methods or ():
            content = found["paths"][route.path_format][method.lower()]["responses"].get("200", {}).get("content", {})
            if answers:
                several = [references[each] for each in answers]
                shape = several[0] if len(several) == 1 else {"anyOf": several}
                content["application/json"] = {"schema": {"allOf": [shape, references[Told]]}}
            if sent:
                # One message of the stream: its event, and the JSON of its data.
                content["text/event-stream"]["x-message"] = {"anyOf": [references[each] for each in sent]}


def _schemas(shapes: list[Any]) -> tuple[dict[Any, JsonSchemaValue], dict[str, Any]]:
    """Return a reference for each shape, and the components that they lead to."""
    wanted = [(place, "serialization", TypeAdapter(shape)) for place, shape in enumerate(shapes)]
    found, rest = TypeAdapter.json_schemas(wanted, ref_template=PLACE, schema_generator=_Shapes)  # type: ignore[arg-type]
    return {shape: found[place, "serialization"] for place, shape in enumerate(shapes)}, rest["$defs"]
