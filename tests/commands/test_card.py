"""The stringing card as a file: of the size, hand and terms asked for, the same bytes every time, or one sentence."""


def test_the_card_is_written_for_the_size_hand_and_terms_asked_for(run, harbour_file, tmp_path):
    targets = [tmp_path / f"{name}.html" for name in ("one", "two")]
    for target in targets:
        asked = ("--length", "45 cm", "--closure", "clasp", "--threads", "whole", "--hand", "left", "--terms", "uk")
        assert run("card", harbour_file, "-o", target, *asked) == (0, "", "")
    html = targets[0].read_bytes()
    assert html == targets[1].read_bytes() and html.startswith(b"<!doctype html>")
    text = html.decode()
    assert "Left-handed, mirrored, UK terms." in text and "double crochet" in text and "<dd>3,119</dd>" in text


def test_a_size_that_cannot_be_worked_leaves_no_file(run, harbour_file, tmp_path):
    target = tmp_path / "card.html"
    refused = run("card", harbour_file, "-o", target, "--length", "1 mm")
    assert (refused.status, refused.out, target.exists()) == (2, "", False)
    assert refused.error.startswith("Ropewright: That leaves")
