//! When a requirement binds: `conditions.yaml`, in which the findings tell.

use super::{by, made};
use crate::outfit::{DAY, Outfit, vessel};

/// Which of the named requirements have a finding.
fn bound(vessel: &Outfit, day: &str, named: &[&str]) -> Vec<String> {
    let judged = vessel.under(&super::profile("conditions.yaml"), day);
    judged
        .requirements()
        .iter()
        .filter(|id| named.contains(*id))
        .map(|id| (*id).to_owned())
        .collect()
}

/// Whether a requirement binds the vessel; none if nobody can tell.
fn binds(vessel: &Outfit, requirement: &str) -> Option<bool> {
    let judged = by("conditions.yaml", vessel);
    match judged.codes(requirement).first() {
        Some(&"binding-unknown") => None,
        Some(_) => Some(true),
        None => Some(judged.outcome(requirement) != "unbound"),
    }
}

#[test]
fn the_four_sides_of_a_threshold_differ_at_the_threshold_itself() {
    let sides = ["low", "high", "under", "from-4"];
    for (freeboard, expected) in [
        ("3 ft", &["low", "under"][..]),
        ("1219.199999 mm", &["low", "under"]),
        ("4 ft", &["low", "from-4"]),
        ("1219.200001 mm", &["high", "from-4"]),
        ("5 ft", &["high", "from-4"]),
    ] {
        assert_eq!(bound(&vessel(freeboard), DAY, &sides), expected, "{freeboard}");
    }
    assert_eq!(binds(&vessel("5 ft").unsaid("freeboard"), "low"), None);
}

#[test]
fn a_feature_of_the_vessel_is_looked_at() {
    let with = |features: &str| binds(&vessel("5 ft").set("features", features), "no-wheelhouse");
    assert_eq!(with("{ wheelhouse: no }"), Some(true));
    assert_eq!(with("{ wheelhouse: yes }"), Some(false));
    assert_eq!(with("{}"), None);
}

#[test]
fn a_requirement_may_hang_on_another_item_aboard() {
    let with = |kit: &[&str]| {
        let vessel = vessel("5 ft").with(kit);
        (binds(&vessel, "with-tire"), binds(&vessel, "without-tire"))
    };
    let here = (Some(true), Some(false));
    let not_here = (Some(false), Some(true));
    assert_eq!(with(&["{ mark: T-1, kind: tire }"]), here);
    assert_eq!(with(&[]), not_here);
    assert_eq!(with(&["{ mark: T-1, kind: tire, condition: broken }"]), not_here);
    assert_eq!(with(&["{ mark: T-1, kind: tire, where: ashore }"]), not_here);
    assert_eq!(with(&["{ mark: T-1, kind: tire, expires: 2026-03-01 }"]), not_here);
    assert_eq!(with(&["{ mark: T-1, kind: tire, where: unknown }"]), (None, None));
    assert_eq!(with(&["{ mark: T-1, kind: tire, condition: unknown }"]), (None, None));
    // On 2 March: the last day of a label and the day of buying count.
    assert_eq!(with(&["{ mark: T-1, kind: tire, expires: 2026-03-02 }"]), here);
    assert_eq!(with(&["{ mark: T-1, kind: tire, acquired: 2026-03-02 }"]), here);
    assert_eq!(with(&["{ mark: T-1, kind: tire, acquired: 2026-03-03 }"]), not_here);
    let lent = |until: &str| {
        let place = format!("{{ lent to: Test Plover, from: 2026-02-01, until: {until} }}");
        with(&[&format!("{{ mark: T-1, kind: tire, where: {place} }}")])
    };
    assert_eq!(lent("2026-03-01"), here);
    assert_eq!(lent("2026-03-02"), not_here);
    let partial = vessel("5 ft").set("covers", "listed things only");
    assert_eq!(binds(&partial, "with-tire"), None);
    assert_eq!(binds(&partial.set("all seen", "[tire]"), "with-tire"), Some(false));
}

#[test]
fn gear_area_and_permit_are_tags_of_the_vessel() {
    for (requirement, key, tag, other) in [
        ("trap", "gear", "trap", "pelagic-longline"),
        ("gulf", "areas", "gulf-of-mexico", "atlantic"),
        ("permitted", "permits", "atlantic-hms", "dolphin-wahoo-commercial"),
    ] {
        assert_eq!(
            binds(&vessel("5 ft").set(key, &format!("[{tag}]")), requirement),
            Some(true),
            "{tag}"
        );
        assert_eq!(
            binds(&vessel("5 ft").set(key, &format!("[{other}, {tag}]")), requirement),
            Some(true),
            "{tag}"
        );
        assert_eq!(
            binds(&vessel("5 ft").set(key, &format!("[{other}]")), requirement),
            Some(false),
            "{tag}"
        );
        assert_eq!(binds(&vessel("5 ft").unsaid(key), requirement), None, "{tag}");
    }
}

#[test]
fn the_trips_areas_and_gear_stand_in_for_the_vessels() {
    let home = vessel("5 ft").set("areas", "[atlantic]").set("gear", "[trap]");
    assert_eq!((binds(&home, "gulf"), binds(&home, "trap")), (Some(false), Some(true)));
    let away = home.set("trip", "{ areas: [gulf-of-mexico], gear: [handline] }");
    assert_eq!((binds(&away, "gulf"), binds(&away, "trap")), (Some(true), Some(false)));
}

#[test]
fn months_may_run_over_the_end_of_the_year() {
    let months = ["winter", "in-may"];
    for (day, expected) in [
        ("2026-10-31", &[][..]),
        ("2026-11-01", &["winter"]),
        ("2026-12-31", &["winter"]),
        ("2027-01-01", &["winter"]),
        ("2027-02-28", &["winter"]),
        ("2027-03-01", &[]),
        ("2026-05-01", &["in-may"]),
        ("2026-05-31", &["in-may"]),
        ("2026-06-01", &[]),
    ] {
        assert_eq!(bound(&vessel("5 ft"), day, &months), expected, "{day}");
    }
}

#[test]
fn a_trip_into_a_bound_month_is_bound() {
    let arguments = [
        "--profile",
        &super::profile("conditions.yaml"),
        "--on",
        "2026-02-27",
        "--return",
        "2026-05-02",
    ];
    let judged = vessel("5 ft").check(&arguments);
    assert_eq!((judged.outcome("winter"), judged.outcome("in-may")), ("not-met", "not-met"));
    let arguments = [
        "--profile",
        &super::profile("conditions.yaml"),
        "--on",
        "2026-03-02",
        "--return",
        "2026-04-30",
    ];
    let judged = vessel("5 ft").check(&arguments);
    assert_eq!((judged.outcome("winter"), judged.outcome("in-may")), ("unbound", "unbound"));
}

#[test]
fn any_of_several_conditions_binds_group_by_group() {
    let with = |gear: &str, area: &str, wheelhouse: &str| {
        let vessel = vessel("5 ft")
            .set("gear", &format!("[{gear}]"))
            .set("areas", &format!("[{area}]"))
            .set("features", &format!("{{ wheelhouse: {wheelhouse} }}"));
        (binds(&vessel, "either").unwrap(), binds(&vessel, "both").unwrap())
    };
    assert_eq!(with("trap", "atlantic", "yes"), (true, false));
    assert_eq!(with("handline", "gulf-of-mexico", "no"), (true, false));
    assert_eq!(with("handline", "gulf-of-mexico", "yes"), (false, false));
    assert_eq!(with("handline", "atlantic", "no"), (false, false));
    assert_eq!(with("trap", "gulf-of-mexico", "yes"), (true, true));
}

#[test]
fn one_condition_that_fails_settles_it_whatever_is_unknown() {
    let vessel = vessel("5 ft").set("gear", "[handline]").unsaid("areas");
    assert_eq!(binds(&vessel, "both"), Some(false));
    assert_eq!(binds(&vessel.set("gear", "[trap]"), "both"), None);
}

#[test]
fn an_exemption_letter_aboard_lifts_a_requirement() {
    let letter = |state: &str| {
        let documents = [format!("{{ kind: exemption letter, state: {state} }}")];
        binds(&vessel("5 ft").carrying(&documents), "unless-letter")
    };
    assert_eq!(letter("aboard"), Some(false));
    assert_eq!(letter("lost"), Some(true));
    assert_eq!(binds(&vessel("5 ft"), "unless-letter"), Some(true));
    let expired = ["{ kind: exemption letter, state: aboard, expires: 2026-03-01 }"];
    assert_eq!(binds(&vessel("5 ft").carrying(&expired), "unless-letter"), Some(true));
    let partial = vessel("5 ft").set("covers", "listed things only");
    assert_eq!(binds(&partial, "unless-letter"), None);
}

#[test]
fn any_full_group_of_exceptions_lifts_a_requirement() {
    let with = |gear: &str, area: &str, wheelhouse: &str| {
        let vessel = vessel("5 ft")
            .set("gear", &format!("[{gear}]"))
            .set("areas", &format!("[{area}]"))
            .set("features", &format!("{{ wheelhouse: {wheelhouse} }}"));
        binds(&vessel, "unless-list")
    };
    assert_eq!(with("trap", "atlantic", "yes"), Some(false));
    assert_eq!(with("handline", "gulf-of-mexico", "no"), Some(false));
    assert_eq!(with("handline", "gulf-of-mexico", "yes"), Some(true));
}

#[test]
fn a_requirement_may_hold_from_one_day_until_another() {
    for (day, expected) in [
        ("2026-02-28", &[][..]),
        ("2026-03-01", &["spring-2026"]),
        ("2026-05-31", &["spring-2026"]),
        ("2026-06-01", &[]),
    ] {
        assert_eq!(bound(&vessel("5 ft"), day, &["spring-2026"]), expected, "{day}");
    }
}

/// A season counts inside a list of alternatives too: ready until the day
/// before it begins.
#[test]
fn a_season_inside_a_list_ends_what_a_kit_is_good_for() {
    let until = |when: &str| {
        let rule = made(&[format!("id: one, title: One, carry: 1 pliers, when: {when}")]);
        let judged = rule.judges(&vessel("5 ft"));
        judged.only()["ready_until"].clone()
    };
    let may = serde_json::json!({ "state": "day", "day": "2026-04-30" });
    assert_eq!(until("{ months: May }"), may);
    assert_eq!(until("{ any of: [{ months: May, wheelhouse: yes }, { gear: trap }] }"), may);
    assert_eq!(until("{ any of: [{ gear: trap }] }")["state"], "no-end");
}
