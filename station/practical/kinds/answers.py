"""What an answer with results or a prediction may be: of any kind of practical."""

from station.practical.kinds.contract import RefusedPlan
from station.practical.kinds.once.contract import OncePromise, OnceResult
from station.practical.kinds.portions.contract import PortionsPromise, PortionsResult

Result = PortionsResult | OnceResult
Promise = PortionsPromise | OncePromise | RefusedPlan
