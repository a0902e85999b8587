"""What if a crop were grown again in another way: a partial budget of the change."""

from growlog.services.what_if.answer import WhatIfAnswer, WhatIfStart, starting_point, what_if
from growlog.services.what_if.inputs import ChangedInput, OtherCost, WhatIf

__all__ = ["ChangedInput", "OtherCost", "WhatIf", "WhatIfAnswer", "WhatIfStart", "starting_point", "what_if"]
