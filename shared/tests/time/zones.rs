//! Local times in real time zones, across every change of their clocks in 2026 and 2027.

use lastpull_core::time::{Day, OffsetChange, TimeOfDay, WallClock, WallTime, Zone, offset_changes};
use std::collections::BTreeMap;

fn seconds(text: &str) -> WallTime {
    WallTime::from_unix_ms(text.parse::<u64>().unwrap() * 1_000)
}

/// The zones by name: from 2026 to 2027, every change of the offset.
fn zones() -> BTreeMap<&'static str, Zone> {
    let rows = include_str!("../data/time_zone_changes.csv").lines().skip(1);
    let mut changes: BTreeMap<&str, Vec<OffsetChange>> = BTreeMap::new();
    for row in rows {
        let [zone, at, minutes] = row.split(',').collect::<Vec<_>>()[..] else { panic!("{row}") };
        changes.entry(zone).or_default().push(OffsetChange { at: seconds(at), minutes: minutes.parse().unwrap() });
    }
    let zone = |changes: Vec<OffsetChange>| Zone::new(changes[0].minutes, changes.leak());
    changes.into_iter().map(|(name, changes)| (name, zone(changes))).collect()
}

/// Zone, local day and time, and the moment that they are, as an independent program computed them.
fn published() -> impl Iterator<Item = (Zone, Day, TimeOfDay, WallTime, &'static str)> {
    let zones = zones();
    include_str!("../data/time_local_moments.csv").lines().skip(1).map(move |row| {
        let [zone, local, at] = row.split(',').collect::<Vec<_>>()[..] else { panic!("{row}") };
        let (day, time) = local.split_once('T').unwrap();
        (zones[zone], Day::from_iso(day).unwrap(), TimeOfDay::parse(time).unwrap(), seconds(at), row)
    })
}

#[test]
fn a_due_time_is_the_published_moment_around_each_change_of_the_clocks() {
    for (zone, day, time, at, row) in published() {
        // Asked in January or in July: the offset of today plays no part.
        for now in [1_768_500_000_000, 1_784_100_000_000].map(WallTime::from_unix_ms) {
            assert_eq!(WallClock { now, zone }.moment(day, time), at, "{row}");
        }
    }
}

#[test]
fn a_moment_reads_back_as_the_local_day_and_time_that_it_is() {
    let mut skipped = 0;
    for (zone, day, time, at, row) in published() {
        let clock = WallClock { now: at, zone };
        if clock.time_of_day(at) == time {
            assert_eq!(clock.day_of(at), day, "{row}");
        } else {
            // What the clocks skip.
            skipped += 1;
            assert!(clock.time_of_day(at) > time, "{row}");
        }
    }
    assert!(skipped > 20, "{skipped}");
}

#[test]
fn the_changes_of_a_zone_are_found_to_the_millisecond() {
    let [from, to] = [1_767_225_600_000, 1_830_297_600_000].map(WallTime::from_unix_ms);
    for (name, zone) in zones() {
        let (minutes, found) = offset_changes(|at| zone.offset_at(at), from, to);
        assert_eq!(minutes, zone.offset_at(from), "{name}");
        let again = Zone::new(minutes, found.leak());
        for hour in 0..(to.unix_ms() - from.unix_ms()) / 900_000 {
            let at = WallTime::from_unix_ms(from.unix_ms() + hour * 900_000);
            let just_before = WallTime::from_unix_ms(at.unix_ms() - 1);
            assert_eq!(again.offset_at(at), zone.offset_at(at), "{name} {hour}");
            assert!(hour == 0 || again.offset_at(just_before) == zone.offset_at(just_before), "{name} {hour}");
        }
    }
}

#[test]
fn a_day_of_25_hours_is_one_day() {
    let zone = zones()["America/New_York"];
    // 2026-11-01, when the clocks go back at two.
    let day = Day::from_iso("2026-11-01").unwrap();
    let clock = WallClock { now: WallTime::EPOCH, zone };
    let (begin, end) = (clock.moment(day, TimeOfDay::MIDNIGHT), clock.moment(day.plus_days(1), TimeOfDay::MIDNIGHT));
    assert_eq!(end.since(begin).whole_hours(), 25);
    for hour in 0..25 {
        let at = WallTime::from_unix_ms(begin.unix_ms() + hour * 3_600_000);
        assert_eq!(clock.day_of(at), day, "{hour}");
    }
}
