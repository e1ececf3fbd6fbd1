"""Steps of a raising, looked up."""

from __future__ import annotations

from ribwright.steps import Step


def named(found: tuple[Step, ...], name: str) -> Step:
    """The one step of that name."""
    (step,) = [step for step in found if step.name == name]
    return step


def sizes(step: Step) -> dict[tuple[str, str], float]:
    """What a step's tape reads (mm), by what is read and where."""
    return {(one.what, one.at): one.size for one in step.dimensions}
