"""What an answer with results or a prediction may be: of any kind of practical."""

from station.practical.kinds.contract import RefusedPlan
from station.practical.kinds.once.contract import OncePromise, OnceResult
from station.practical.kinds.portions.contract import PortionsPromise, PortionsResult
from station.practical.kinds.ratios.contract import RatiosPromise, RatiosResult

Result = PortionsResult | OnceResult | RatiosResult
Promise = PortionsPromise | OncePromise | RatiosPromise | RefusedPlan
