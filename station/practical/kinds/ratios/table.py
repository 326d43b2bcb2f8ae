"""The mixtures as a table: what was mixed, the temperatures, and the rise."""

from statistics import fmean

from station.practical.kinds.kind import Table
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.state import State
from station.words import say

COLUMNS = (
    ("alkali_cm3", say("sheet-alkali-volume")),
    ("acid_cm3", say("sheet-acid-volume")),
    ("alkali_fraction", say("sheet-alkali-fraction")),
    ("start_c", say("sheet-start-of-both")),
    ("highest_c", say("sheet-highest")),
    ("rise_c", say("sheet-rise")),
    ("count", say("sheet-mixed-times")),
)
RISE = 5


def table(plan: RatiosPlan, state: State) -> Table:
    """Return a row for each mixture that has a rise: means where it was mixed more than once."""
    total_cm3, rows = plan.mixtures.total_cm3, []
    for point in state.mean:
        read = [
            {each.portion: each.temperature_c for each in repeat.points}
            for repeat in state.counted
            if repeat.cup == point["portion"]
        ]
        whole = [each for each in read if 0 in each and 1 in each]
        start_c = fmean(plan.start_of(point["portion"], each[0], state.alkali_c) for each in whole)
        highest_c, alkali_cm3 = fmean(each[1] for each in whole), point["volume_cm3"]
        acid_cm3 = total_cm3 - plan.mixtures.alkali_cm3[point["portion"] - 1]
        share = alkali_cm3 / (alkali_cm3 + acid_cm3)
        rows.append((alkali_cm3, acid_cm3, share, start_c, highest_c, point["temperature_c"], float(len(whole))))
    return Table(COLUMNS, tuple(rows), RISE)
