"""Reads the part of Project Fluent that the catalogues use, and puts values into it.

Messages and terms; patterns over several lines; the placeables `{ $value }`, `{ other-message }`, `{ -term }`,
`{ "text" }` and selectors. A word between `<mean>` and `</mean>` is explained on the page: here the marks are dropped.
No attributes, functions or arguments of terms. The reference implementation
(fluent.runtime) takes 8 MB and ten times as long to import; the tests hold this one against it.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final, NamedTuple, TypeGuard

Value = int | float | str
"""What a value may be; a message is a `str` too."""


class Variable(NamedTuple):
    """`{ $name }`."""

    name: str


class Reference(NamedTuple):
    """`{ other-message }` or `{ -term }`."""

    id: str


class Selector(NamedTuple):
    """`{ $name -> [one] … *[other] … }`: patterns by key, and the key that stands for all others."""

    name: str
    variants: Mapping[str, "Pattern"]
    default: str


Pattern = tuple[str | Variable | Reference | Selector, ...]

_ENTRY: Final = re.compile(r"^(-?[A-Za-z][\w-]*) *= *([^\n]*(?:\n(?=[ }\n]|\Z)[^\n]*)*)", re.MULTILINE)
"""An id, and all that follows up to the next line that is neither indented nor blank."""
_BLANK: Final = re.compile(r"\n +(?=\n|\Z)")
_PLACEABLE: Final = re.compile(r'\{\s*(?:\$([A-Za-z][\w-]*)|(-?[A-Za-z][\w-]*)|"([^"\\]*)")\s*(->|\})')
_VARIANT: Final = re.compile(r"\s*(\*?)\[\s*([\w.-]+)\s*\][ ]*")
_NUMBER: Final = re.compile(r"[-+−]?\d+(\.\d+)?(e[-+]?\d+)?")
_AS_IT_IS: Final = re.compile(r"(?:^|_)(?:name|text|typed|path|file|version|address|date|time)$")
"""Values whose names end so are names and words of other people: their points are no decimal signs."""


_MARK: Final = re.compile(r"</?[a-z]+(?:-[a-z]+)*>")
"""Begins or ends a word of the glossary (`page-glossary-word`)."""


def unmarked(source: str) -> str:
    """Return the source of a catalogue without the marks of words that the page explains."""
    return _MARK.sub("", source)


def entries(source: str) -> dict[str, str]:
    """The text of each entry by its id, not parsed yet. Raises ``ValueError`` for an id that is there twice."""
    found: list[tuple[str, str]] = _ENTRY.findall(unmarked(source))
    texts = dict(found)
    if len(texts) != len(found):
        raise ValueError(
            f"these are there twice: {[of for of, count in Counter(of for of, _ in found).items() if count > 1]}"
        )
    return texts


@dataclass
class _Reader:
    """Reads the pattern of one entry from left to right."""

    text: str
    at: int = 0

    def pattern(self, *, in_variant: bool) -> Pattern:
        parts: list[str | Variable | Reference | Selector] = []
        start = self.at
        while self.at < len(self.text):
            char = self.text[self.at]
            if char == "{":
                parts += [self.text[start : self.at], self.placeable()]
                start = self.at
            elif in_variant and char in "}[*" and not self.text[start : self.at].rpartition("\n")[2].strip():
                break
            elif char == "}":
                if not in_variant:
                    raise ValueError(f"a brace is closed that was not opened: {self.text}")
                break
            else:
                self.at += 1
        parts.append(self.text[start : self.at])
        return _dedented(parts)

    def placeable(self) -> Variable | Reference | Selector | str:
        found = _PLACEABLE.match(self.text, self.at)
        if found is None:
            raise ValueError(f"not understood: {self.text[self.at :]}")
        self.at = found.end()
        name, reference, literal, end = found.groups()
        if end == "->":
            if name is None:
                raise ValueError(f"only a value can select: {self.text}")
            return self.selector(name)
        # A list keeps a literal apart from the text around it, whose blanks may be cut.
        return Variable(name) if name else Reference(reference) if reference else _Literal(literal)

    def selector(self, name: str) -> Selector:
        variants: dict[str, Pattern] = {}
        default = ""
        while (key := _VARIANT.match(self.text, self.at)) is not None:
            self.at = key.end()
            variants[key[2]] = self.pattern(in_variant=True)
            default = key[2] if key[1] else default
        end = re.compile(r"\s*\}").match(self.text, self.at)
        if end is None or not default:
            raise ValueError(f"a selector without an end or a default (*): {self.text}")
        self.at = end.end()
        return Selector(name, variants, default)


class _Literal(str):
    """A text in quotation marks: its blanks are kept."""

    __slots__ = ()


def _is_text(part: str | Variable | Reference | Selector) -> TypeGuard[str]:
    return isinstance(part, str) and not isinstance(part, _Literal)


def _dedented(parts: list[str | Variable | Reference | Selector]) -> Pattern:
    """Without the blanks that the lines begin with alike, and those around the whole."""
    # A line may begin with a placeable: then the text before it ends with the line's blanks.
    begins = re.compile(r"\n( *)(?=[^ \n]|\Z)")
    blanks = [
        len(found[1])
        for place, part in enumerate(parts)
        if _is_text(part)
        for found in begins.finditer(part)
        if found.end() < len(part) or place < len(parts) - 1
    ]
    cut = re.compile(rf"\n {{0,{min(blanks, default=0)}}}")
    kept = [cut.sub("\n", part) if _is_text(part) else part for part in parts]
    if _is_text(kept[0]):
        kept[0] = kept[0].lstrip("\n")
    if _is_text(kept[-1]):
        kept[-1] = kept[-1].rstrip(" \n")
    return tuple(part for part in kept if part != "")


def parse(text: str) -> Pattern:
    """The pattern of an entry. Raises ``ValueError``."""
    return _Reader(_BLANK.sub("\n", text).rstrip()).pattern(in_variant=False)


@dataclass(frozen=True)
class Catalogue:
    """The entries of one language."""

    language: str
    sources: Mapping[str, str]
    decimal_sign: str
    plural: Callable[[float, int], str]
    parsed: dict[str, Pattern]

    def pattern(self, of: str) -> Pattern:
        """The parsed entry. Raises ``KeyError``."""
        pattern = self.parsed.get(of)
        if pattern is None:
            pattern = self.parsed[of] = parse(self.sources[of])
        return pattern

    def text(self, of: str, values: Mapping[str, Value], nested: Callable[[str], str]) -> str:
        """The entry with its values; ``nested`` says a value in this language. Raises ``KeyError``."""
        return "".join(self._said(self.pattern(of), values, nested))

    def _said(self, pattern: Pattern, values: Mapping[str, Value], nested: Callable[[str], str]) -> Iterator[str]:
        for part in pattern:
            if isinstance(part, str):
                yield part
            elif isinstance(part, Variable):
                yield self._value(part.name, values[part.name], nested)
            elif isinstance(part, Reference):
                yield self.text(part.id, values, nested)
            else:
                chosen = part.variants.get(self._key(part, values[part.name]), part.variants[part.default])
                yield from self._said(chosen, values, nested)

    def _value(self, name: str, value: Value, nested: Callable[[str], str]) -> str:
        text = nested(value) if isinstance(value, str) else str(value)
        if _NUMBER.fullmatch(text) and self.takes_decimal_sign(name):
            return text.replace(".", self.decimal_sign)
        return text

    def takes_decimal_sign(self, name: str) -> bool:
        """Whether a number in the value of this name is written with the language's sign."""
        return self.decimal_sign != "." and not _AS_IT_IS.search(name)

    def _key(self, selector: Selector, value: Value) -> str:
        """An exact number before its plural category; a text by itself."""
        if isinstance(value, str):
            return value
        exact = f"{value:g}"
        return exact if exact in selector.variants else self.plural(value, 0 if value == int(value) else 1)

    def values_of(self, of: str) -> frozenset[str]:
        """Names of all the values that an entry may use, those of the entries that it refers to among them."""
        return frozenset(self._names(self.pattern(of)))

    def _names(self, pattern: Pattern) -> Iterator[str]:
        for part in pattern:
            if isinstance(part, Variable):
                yield part.name
            elif isinstance(part, Reference):
                yield from self._names(self.pattern(part.id))
            elif isinstance(part, Selector):
                yield part.name
                for variant in part.variants.values():
                    yield from self._names(variant)
