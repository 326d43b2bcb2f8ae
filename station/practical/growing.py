"""What grows by one at a time and is never changed: as cheap to grow as a list, as safe to keep as a tuple.

Copying a tuple for each of n samples costs n² in all. Here what is older shares the items of what is newer and sees
only its own share of them; who grows anything but the newest gets a copy.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice
from typing import Generic, TypeVar, overload

Item = TypeVar("Item")


class Growing(Sequence[Item], Generic[Item]):
    """An unchangeable sequence; equal to a tuple of the same items."""

    __slots__ = ("_items", "_length")

    def __init__(self, items: Iterable[Item] = ()) -> None:
        self._items = list(items)
        self._length = len(self._items)

    def with_one(self, item: Item) -> "Growing[Item]":
        """Return the sequence with one item more."""
        items, length = self._items, self._length
        if len(items) == length:
            items.append(item)
        if items[length] != item:  # another has grown it already, with something else
            items = [*items[:length], item]
        return self._of(items, length + 1)

    @classmethod
    def _of(cls, items: list[Item], length: int) -> "Growing[Item]":
        grown = cls.__new__(cls)
        grown._items, grown._length = items, length
        return grown

    def __len__(self) -> int:
        return self._length

    def __iter__(self) -> Iterator[Item]:
        return islice(self._items, self._length)

    def __reversed__(self) -> Iterator[Item]:
        return islice(reversed(self._items), len(self._items) - self._length, None)

    @overload
    def __getitem__(self, place: int) -> Item: ...
    @overload
    def __getitem__(self, place: slice) -> tuple[Item, ...]: ...
    def __getitem__(self, place: int | slice) -> Item | tuple[Item, ...]:
        if isinstance(place, slice):
            return tuple(self._items[each] for each in range(*place.indices(self._length)))
        return self._items[range(self._length)[place]]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Growing | tuple) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        return hash(tuple(self))

    def __repr__(self) -> str:
        return repr(tuple(self))


class Keys:
    """An unchangeable set of keys that grows by one at a time."""

    __slots__ = ("_count", "_places")

    def __init__(self) -> None:
        self._places: dict[str, int] = {}
        self._count = 0

    def with_one(self, key: str) -> "Keys":
        """Return the set with this key in it."""
        if key in self:
            return self
        places, count = self._places, self._count
        if len(places) > count and places.get(key) != count:  # another has grown it already, with another key
            places = {each: place for each, place in places.items() if place < count}
        places[key] = count
        grown = Keys()
        grown._places, grown._count = places, count + 1
        return grown

    def __contains__(self, key: object) -> bool:
        return self._places.get(key, self._count) < self._count  # type: ignore[call-overload, no-any-return]

    def __len__(self) -> int:
        return self._count

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Keys) and set(self._own()) == set(other._own())

    def __hash__(self) -> int:
        return hash(frozenset(self._own()))

    def __repr__(self) -> str:
        return f"Keys({self._own()})"

    def _own(self) -> list[str]:
        return [key for key, place in self._places.items() if place < self._count]
