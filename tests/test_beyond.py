"""What is noted of whom a browser asks."""

from __future__ import annotations


def test_whom_a_page_asks_beyond_this_computer_is_noted_and_nobody_answers(chromium, beyond):
    page = chromium.new_page()
    ask = "address => fetch(address, {mode: 'no-cors'}).then(answer => answer.type, () => 'nobody')"
    beyond.asked.clear()
    assert page.evaluate(ask, "https://beads.example/colours") == "nobody"
    page.evaluate(ask, "http://beads.example/sizes")
    page.close()
    assert beyond.asked == ["CONNECT beads.example:443 HTTP/1.1", "GET http://beads.example/sizes HTTP/1.1"]
    beyond.asked.clear()
