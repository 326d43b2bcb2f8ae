"""How numbers are written and carried."""

import pytest

from station.chemistry.heat import Measured, Sheet, measured, number, put, show
from station.words import plain


@pytest.mark.parametrize(
    ("value", "u", "text"),
    [
        (2886.96, 42.3, "2887 ± 42"),
        (2886.96, 423.0, "2890 ± 420"),
        (0.39364, 0.0029, "0.3936 ± 0.0029"),
        (-55.9457, 1.4029, "-55.9 ± 1.4"),
        (0.5, 0.0, "0.5"),
        (4.184, 0.0, "4.184"),
        (12345.6, 0.0, "12346"),
        (9.97, 0.0996, "9.970 ± 0.100"),
    ],
)
def test_a_value_is_written_to_two_digits_of_its_uncertainty(value: float, u: float, text: str) -> None:
    assert show(value, u) == text


def test_a_line_keeps_value_uncertainty_and_words() -> None:
    sheet = Sheet()
    width = number(Measured(2.0, 0.1), "the width")
    area = sheet.line(plain("area"), "A = a²", f"A = {put(width)}²", width * width, "cm²")
    step = sheet.steps[0]
    assert (step.text, step.formula, step.working, step.unit) == ("area", "A = a²", "A = 2.00²", "cm²")
    # A square is fully correlated with itself: u = 2 a u(a), not a u(a) √2.
    assert (step.value, step.u) == pytest.approx((4.0, 0.4))
    assert step.answer == "4.00 ± 0.40 cm²"
    assert measured(area) == pytest.approx((4.0, 0.4))


@pytest.mark.parametrize(
    "figure", [Measured(float("nan"), 0.1), Measured(float("inf")), Measured(1, -0.1), Measured(1, float("nan"))]
)
def test_what_is_no_number_is_refused_by_name(figure: Measured) -> None:
    with pytest.raises(ValueError, match="the width must be a number"):
        number(figure, "the width")
