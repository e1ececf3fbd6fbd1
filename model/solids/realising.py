"""Each recipe to its solid, made once: equal recipes give the same object."""

from __future__ import annotations

from functools import cache

from OCP.TopoDS import TopoDS_Solid

from ..recipe import Cut, Joined, Prism, Recipe, Sheet, Turned
from .booleans import cut, joined
from .prism import prism
from .ribbed_sheet import sheet
from .turned import turned


@cache
def realise(recipe: Recipe) -> TopoDS_Solid:
    """The solid of a recipe, in the recipe's own frame (mm): valid, closed, outward oriented.

    Equal recipes give the same object, so pieces that share a recipe share a solid (compare with
    `is`). Raises ValueError for a recipe that is no single body, such as a cut that leaves two.
    """
    match recipe:
        case Sheet():
            return sheet(recipe)
        case Prism():
            return prism(recipe)
        case Turned():
            return turned(recipe)
        case Cut():
            return cut(realise(recipe.body), [(realise(tool), place) for tool, place in recipe.tools])
        case Joined():
            return joined([(realise(part), place) for part, place in recipe.parts])
