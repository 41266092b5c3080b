"""The stylesheets of a page as one."""

from __future__ import annotations

from webapp.server.stylesheet import joined


def test_what_a_sheet_imports_stands_in_its_place_and_in_its_layer(tmp_path):
    (tmp_path / "inks.css").write_text(":root { --ink: black }\n")
    (tmp_path / "beads.css").write_text("@media print { .bead { color: var(--ink) } }\n")
    sheet = tmp_path / "all.css"
    sheet.write_text('@layer parts;\n@import url("inks.css");\n@import url("beads.css") layer(parts);\n')
    assert joined(sheet) == (
        "@layer parts;\n:root { --ink: black }\n\n@layer parts {\n@media print { .bead { color: var(--ink) } }\n}\n"
    )
