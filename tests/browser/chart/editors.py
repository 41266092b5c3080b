"""The chart editor as a person uses it: where beads are on the screen, and what the server then holds."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from playwright.sync_api import Page, expect

from engine.pattern.pattern import Pattern
from webapp.pages.addresses import address
from webapp.storage import patterns
from webapp.storage.database import Database

KEPT = "[data-saved][data-state=kept]"
IDLE = "new Promise(done => requestAnimationFrame(() => setTimeout(done)))"  # a dialog says a moment later that it was closed
WHERE = """k => { const {camera, pattern} = document.querySelector("[data-draw]").store.state, pair = 2 * pattern.around + 1, rest = k % pair;
    const row = 2 * Math.floor(k / pair) + (rest > pattern.around), x = rest > pattern.around ? 2 * (rest - pattern.around) - 1 : 2 * rest;
    const half = pattern.hand === "left" ? 2 * pattern.around - x : x, high = Math.max(1, Math.round(camera.pitch * .47));
    const box = document.querySelector("[data-chart]").getBoundingClientRect();
    return {x: box.left + ((row + .5) * camera.pitch - camera.left) / camera.ratio, y: box.top + ((half + 1) * high - camera.top) / camera.ratio}; }"""


@dataclass
class Editor:
    """An open chart editor; beads are counted from nought."""

    page: Page
    database: Database
    id: int

    def at(self, bead: int) -> tuple[float, float]:
        """The middle of a bead on the screen."""
        place = self.page.evaluate(WHERE, bead)
        return place["x"], place["y"]

    def click(self, *beads: int) -> None:
        for bead in beads:
            self.page.mouse.click(*self.at(bead))

    def drag(self, *beads: int) -> None:
        self.page.mouse.move(*self.at(beads[0]))
        self.page.mouse.down()
        for bead in beads[1:]:
            self.page.mouse.move(*self.at(bead), steps=4)
        self.page.mouse.up()

    def tool(self, words: str) -> None:
        self.page.locator(".rail").get_by_role("button", name=words, exact=True).click()

    def bead(self, code: str) -> None:
        self.page.locator(f".tube[data-code={code}]").click()

    def press(self, *keys: str) -> None:
        for key in keys:
            self.page.keyboard.press(key)

    def focus(self) -> None:
        """Focus on the chart, as the tab key brings it."""
        self.page.locator("[data-along]").focus()
        self.page.keyboard.press("Tab")
        expect(self.page.locator("[data-chart]")).to_be_focused()

    def kept(self) -> Pattern:
        """The pattern that the server holds once everything is kept."""
        self.page.evaluate(IDLE)
        self.page.wait_for_selector(KEPT)
        self.page.evaluate("document.querySelector('[data-draw]').saving.settled()")
        return patterns.load(self.database, self.id).pattern

    def until(self, name: str, fits: Callable[[Any], bool]) -> None:
        """Waits until that part of the state fits."""
        for _ in range(200):
            if fits(self.state(name)):
                return
            self.page.wait_for_timeout(50)
        raise AssertionError(f"{name} is {self.state(name)}")

    def state(self, name: str) -> Any:
        return self.page.evaluate(f"document.querySelector('[data-draw]').store.state.{name}")


def drawing(page: Page, database: Database, pattern: Pattern) -> Editor:
    """The editor opened on a pattern, ready to draw in the drawn stretch alone."""
    editor = Editor(page, database, patterns.create(database, pattern).id)
    page.goto(address("chart", id=editor.id))
    page.wait_for_selector("[data-draw][data-ready]")
    return editor
