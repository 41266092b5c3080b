"""Page values to text: Jinja with everything escaped, and a name that is not defined is an error."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from webapp.pages.filters import FILTERS
from webapp.paths import TEMPLATES


def render(template: str, page: object) -> str:
    """The text of that template, which sees the page value as `page`, and the filters, and nothing else."""
    return environment(TEMPLATES).get_template(template).render(page=page)


@lru_cache(4)
def environment(folder: Path) -> Environment:
    """The templates of a folder; kept, so that each is compiled once."""
    made = Environment(
        loader=FileSystemLoader(folder),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        cache_size=-1,
    )
    made.filters.update(FILTERS)
    made.globals.clear()
    return made
