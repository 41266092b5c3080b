"""One file a resource, its pages and its JSON side by side, in the order of the menu."""

from __future__ import annotations

from webapp.routes import answers, booklet, chart, library, materials, patterns, pictures, settings, stringing

# new and checked patterns stand before those with a number in their address
ROUTERS = tuple(module.router for module in (
    library, chart, patterns, pictures, stringing, materials, booklet, answers, settings))
