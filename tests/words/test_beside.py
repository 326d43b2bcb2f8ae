"""Messages in answers for JSON: the texts stay English, ids and values stand beside them, and come back."""

import json
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from station.words import Message, beside, plain, say, understood

ACID = say("reagent-nitric-acid")
AMOUNT = say("step-amount", reagent=ACID)
WORDS = st.one_of(st.sampled_from([ACID, AMOUNT]), st.text().map(plain), st.integers(), st.none(), st.booleans())
ANSWERS = st.dictionaries(
    st.text().filter(lambda name: name != "messages"),
    st.recursive(WORDS, lambda part: st.lists(part) | st.dictionaries(st.text(), part), max_leaves=20),
)


@given(ANSWERS)
def test_what_is_put_beside_comes_back(answer: dict[str, Any]) -> None:
    told = json.loads(json.dumps(beside(answer)))
    assert {name: part for name, part in told.items() if name != "messages"} == json.loads(json.dumps(answer))
    back = understood(told)
    assert back == answer
    assert beside(back)["messages"] == told["messages"]


def test_an_answer_tells_id_and_values_of_what_it_says() -> None:
    told = beside({"steps": [{"text": AMOUNT}], "samples": [[0.5, 21.0]]})
    nested = {"id": "reagent-nitric-acid", "values": {}, "text": "nitric acid"}
    assert told["messages"] == {"amount of nitric acid": {"id": "step-amount", "values": {"reagent": nested}}}
    assert isinstance(understood(told)["steps"][0]["text"], Message)
