"""A plan as the text of a plan.toml."""

import tomli_w

from station.practical.plan import Plan

ALWAYS = ("title", "repeats", "pace", "results", "prompts")


def plan_toml(plan: Plan) -> str:
    """Return TOML that `read_plan` reads as the same plan: what every practical chooses, and what is not usual."""
    values = plan.model_dump(mode="json", exclude_none=True)
    usual = plan.model_dump(mode="json", exclude_none=True, exclude_defaults=True)
    kept = {key: value for key, value in values.items() if key in ALWAYS or key in usual}
    kept |= {key: usual[key] for key in kept if isinstance(kept[key], dict)}
    return tomli_w.dumps(kept)
