"""What is kept of many dated things as they grow older."""

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from webapp.storage.thinning import BACKUPS, REVISIONS, Rule, kept

moments = st.datetimes(datetime(2024, 1, 1), datetime(2026, 12, 31), timezones=st.just(UTC))
dated = st.lists(moments, max_size=60, unique=True).map(lambda found: dict(enumerate(sorted(found))))
rules = st.sampled_from((REVISIONS, BACKUPS, Rule(0, 1, 1, 1), Rule(3, 0, 0, None)))
NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)


def kept_days(rule, days):
    """Ages in days, of one thing a day, that are kept."""
    found = kept({age: NOW - timedelta(days=age) for age in range(days)}, NOW, rule)
    return sorted(found)


@given(dated, moments, moments, rules)
def test_thinned_often_or_once_the_same_is_kept(all_of, one, other, rule):
    first, then = sorted((one, other))
    before = {key: moment for key, moment in all_of.items() if moment <= first}
    after = {key: moment for key, moment in all_of.items() if first < moment <= then}
    left = {key: before[key] for key in kept(before, first, rule)}
    assert kept(left | after, then, rule) == kept(before | after, then, rule)


@given(dated, rules)
def test_the_newest_of_today_is_kept_whatever_the_rule(all_of, rule):
    today = all_of | {"now": NOW + timedelta(minutes=1)}
    assert (
        "now" in kept({key: min(moment, NOW) if key != "now" else moment for key, moment in today.items()}, NOW, rule)
        or rule.days == 0
    )


@given(dated, moments)
def test_no_month_loses_its_last_revision(all_of, now):
    past = {key: moment for key, moment in all_of.items() if moment <= now}
    months = {(moment.year, moment.month) for moment in past.values()}
    assert {(past[key].year, past[key].month) for key in kept(past, now, REVISIONS)} == months


def test_all_of_two_days_are_kept_of_revisions():
    hours = {hour: NOW - timedelta(hours=hour) for hour in range(96)}
    assert sorted(kept(hours, NOW, REVISIONS)) == [
        *range(43),
        43,
        67,
        91,
    ]  # from 18 o'clock to midnight of the day before


def test_backups_are_kept_for_seven_days_four_weeks_and_twelve_months():
    monthly = [25, 56, 86, 117, 148, 178, 209, 239, 270, 298, 329]
    assert kept_days(Rule(0, 7, 4, 12), 500) == [0, 1, 2, 3, 4, 5, 6, 10, 17, *monthly]
    assert kept_days(BACKUPS, 500) == [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 17, *monthly]


@given(dated, moments, rules)
def test_the_newest_stay_whatever_the_clock_says(all_of, now, rule):
    newest = sorted(all_of, key=lambda key: all_of[key])[-rule.newest :] if rule.newest else []
    assert kept(all_of, now + timedelta(days=27_000), rule) >= set(newest)


def test_the_week_and_the_month_that_run_are_the_first():
    assert kept_days(Rule(0, 0, 1, 0), 40) == [0]
    assert kept_days(Rule(0, 0, 2, 0), 40) == [0, 3]  # 25 November 2026 is a Wednesday
    assert kept_days(Rule(0, 0, 0, 2), 80) == [0, 25]


def test_what_a_rule_does_not_count_goes():
    assert kept_days(Rule(0, 2, 0, 0), 10) == [0, 1]
    assert kept({}, NOW, BACKUPS) == frozenset()
