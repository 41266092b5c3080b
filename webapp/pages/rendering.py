"""Page values to text: Jinja with everything escaped, and a name that is not defined is an error."""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from webapp.pages.filters import FILTERS
from webapp.paths import TEMPLATES

# a number and its unit in what is read: not inside a tag, nor in a field whose text is copied or sent
_MEASURE = re.compile(r"([0-9])[ \n]+(?=(?:mm|cm|m|mg|g|kg|kB|MB|GB|%|(?<=\.[0-9] )in)(?!\w)[^<>]*<(?!/textarea))")


def render(template: str, page: object) -> str:
    """The page of that template, which sees the page value as `page`, and the filters, and nothing else."""
    return held_together(environment(TEMPLATES).get_template(template).render(page=page))


def held_together(html: str) -> str:
    """HTML for the screen with a no-break space between a number and its unit; files and the booklet keep theirs."""
    return _MEASURE.sub("\\1\N{NO-BREAK SPACE}", html)


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
