//! Whom, when, from which freeboard, how many: row by row, written from the
//! rules' texts.

pub(crate) const GULF: &str = "us-gulf-reef-fish-2019";
pub(crate) const OLD_GULF: &str = "us-gulf-reef-fish-before-2019";
pub(crate) const SOUTH: &str = "us-south-atlantic-snapper-grouper-2019";
pub(crate) const APPENDIX_F: &str = "us-622-appendix-f";
pub(crate) const ATLANTIC: &str = "us-atlantic-longline-2009";
pub(crate) const DOLPHIN: &str = "us-dolphin-wahoo-longline-2009";
pub(crate) const HOUSE: &str = "good-practice-longline";

/// How many pieces of a kind serve a requirement.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pieces {
    pub(crate) requirement: &'static str,
    pub(crate) kind: &'static str,
    pub(crate) freeboard: &'static str,
    pub(crate) pieces: u32,
}

/// Requirement and kind, one piece each, as Appendix F, A.1 to A.11, and
/// 635.21(c)(5)(i)(A) to (K) (read) both ask, above 4 ft.
const LONG: [(&str, &str); 2] =
    [("long-line-cutter", "long-line-cutter"), ("inverted-v-device", "inverted-v-device")];
const DEHOOKERS: [(&str, &str); 4] = [
    ("long-dehooker-internal", "long-dehooker-internal"),
    ("long-dehooker-external", "long-dehooker-external"),
    ("short-dehooker-internal", "short-dehooker-internal"),
    ("short-dehooker-external", "short-dehooker-external"),
];
const DECK: [(&str, &str); 5] = [
    ("net", "dip-net"),
    ("support", "tire"),
    ("pliers", "pliers"),
    ("bolt-cutters", "bolt-cutters"),
    ("line-cutters", "line-cutters"),
];

/// Appendix F, A.5, A.6, A.8(b) (read): what else serves.
const ALSO_APPENDIX_F: [(&str, &str); 6] = [
    ("net", "hoop-net"),
    ("net", "hoist"),
    ("support", "boat-cushion"),
    ("support", "cushioned-surface"),
    ("support", "life-saving-device"),
    ("short-dehooker-external", "squeeze-dehooker"),
];

/// Appendix F, A.12 (read); 635.21(c)(5)(i)(L) (read): the types of gag and
/// how many pieces make one.
const GAGS: [(&str, u32); 8] = [
    ("hardwood-block", 1),
    ("wooden-brush-without-bristles", 1),
    ("canine-gag", 3),
    ("chew-bone", 2),
    ("covered-rope-loop", 2),
    ("rope-hank", 1),
    ("pvc-coupling", 4),
    ("oral-speculum", 1),
];

/// 622.29(a)(1), 622.179(a)(1), 635.21(b)(1) (read).
const PAPERS: [(&str, &str); 2] = [
    ("careful-release-document", "careful-release-document"),
    ("handling-placard", "handling-placard"),
];

/// 622.29(a)(1)(iii), (iv) before the 2019 rule (read): one dehooker of each
/// length, of either kind; other supports beside the tire.
const OLD: [(&str, &str); 11] = [
    ("long-dehooker", "long-dehooker-internal"),
    ("long-dehooker", "long-dehooker-external"),
    ("inverted-v-device", "long-dehooker-external"),
    ("short-dehooker", "short-dehooker-internal"),
    ("short-dehooker", "short-dehooker-external"),
    ("support", "boat-cushion"),
    ("support", "life-saving-device"),
    ("support", "cushioned-surface"),
    ("net", "dip-net"),
    ("pliers", "pliers"),
    ("support", "tire"),
];

/// The house's own list: common practice, no published source.
const HOUSES: [(&str, &str, u32); 21] = [
    ("net", "dip-net", 1),
    ("net", "hoop-net", 1),
    ("net", "hoist", 1),
    ("support", "tire", 1),
    ("support", "rope-coil", 1),
    ("long-line-cutter", "long-line-cutter", 1),
    ("long-dehooker", "long-dehooker-external", 1),
    ("long-dehooker", "long-dehooker-internal", 1),
    ("bolt-cutters", "bolt-cutters", 1),
    ("second-dehooker-style", "long-dehooker-external", 2),
    ("second-dehooker-style", "long-dehooker-internal", 2),
    ("short-dehookers", "short-dehooker-external", 2),
    ("short-dehookers", "short-dehooker-internal", 2),
    ("pliers", "pliers", 1),
    ("line-cutters", "line-cutters", 1),
    ("inverted-v-device", "inverted-v-device", 1),
    ("inverted-v-device", "long-dehooker-external", 1),
    ("control-device", "control-tether", 1),
    ("control-device", "control-poles", 1),
    ("mouth-gag", "hardwood-block", 1),
    ("second-mouth-gag", "oral-speculum", 1),
];

/// How many pieces each profile asks, kind by kind.
pub(crate) fn pieces() -> Vec<(&'static str, Pieces)> {
    let mut rows = Vec::new();
    let mut add = |profile, requirement, kind, freeboard, pieces| {
        rows.push((profile, Pieces { requirement, kind, freeboard, pieces }));
    };
    for profile in [APPENDIX_F, GULF, SOUTH, ATLANTIC, DOLPHIN] {
        for (requirement, kind) in LONG.into_iter().chain(DEHOOKERS).chain(DECK) {
            add(profile, requirement, kind, "5 ft", 1);
        }
    }
    for profile in [GULF, ATLANTIC] {
        GAGS.iter().for_each(|&(kind, pieces)| add(profile, "mouth-gags", kind, "5 ft", pieces));
    }
    for profile in [APPENDIX_F, SOUTH, DOLPHIN, OLD_GULF] {
        add(profile, "mouth-gags", "chew-bone", "3 ft", 2);
    }
    ALSO_APPENDIX_F.iter().for_each(|&(of, kind)| add(GULF, of, kind, "5 ft", 1));
    for profile in [GULF, SOUTH, ATLANTIC, OLD_GULF] {
        PAPERS.iter().for_each(|&(of, kind)| add(profile, of, kind, "5 ft", 1));
    }
    add(DOLPHIN, "handling-placard", "handling-placard", "5 ft", 1);
    // 635.21(c)(5)(i)(M)(1), (2) (read).
    for (profile, kind) in
        [(ATLANTIC, "control-tether"), (ATLANTIC, "control-poles"), (DOLPHIN, "control-tether")]
    {
        add(profile, "control-device", kind, "5 ft", 1);
    }
    for (of, kind) in OLD.into_iter().chain(LONG) {
        add(OLD_GULF, of, kind, "5 ft", 1);
    }
    for of in ["bolt-cutters", "line-cutters"] {
        add(OLD_GULF, of, of, "5 ft", 1);
    }
    add(OLD_GULF, "net-low-rail", "dip-net", "3 ft", 1);
    HOUSES.iter().for_each(|&(of, kind, pieces)| add(HOUSE, of, kind, "5 ft", pieces));
    // Appendix F, A.12 (read), as the house borrows it.
    for of in ["mouth-gag", "second-mouth-gag"] {
        GAGS.iter().for_each(|&(kind, pieces)| add(HOUSE, of, kind, "5 ft", pieces));
    }
    rows
}

/// 622.29(a)(1)(iii), (iv), 622.179(a)(1)(iii), (iv) and 622.29(a)(1)(iii),
/// (iv) before the 2019 rule (read): what is asked above 4 ft (`true`) or at
/// 4 ft or less (`false`) only.
pub(crate) fn thresholds() -> Vec<(&'static str, &'static str, bool)> {
    let mut rows = Vec::new();
    for profile in [GULF, SOUTH] {
        for requirement in crate::numbers::lists::FULL_ONLY {
            rows.push((profile, requirement, true));
        }
    }
    for requirement in
        ["long-line-cutter", "replacement-blades", "long-dehooker", "inverted-v-device", "net"]
    {
        rows.push((OLD_GULF, requirement, true));
    }
    rows.push((OLD_GULF, "net-low-rail", false));
    rows
}

/// Whom an edition binds, and on which days.
pub(crate) struct Binding {
    pub(crate) profile: &'static str,
    pub(crate) permits: &'static [&'static str],
    /// With none of them it binds whatever the gear.
    pub(crate) gears: &'static [&'static str],
    /// Days and whether it is in force on them; the first and the last day of
    /// the edition with their neighbours.
    pub(crate) days: &'static [(&'static str, bool)],
}

const REEF_FISH: &[&str] = &["gulf-reef-fish-commercial", "gulf-reef-fish-charter-headboat"];
const SNAPPER_GROUPER: &[&str] = &[
    "south-atlantic-snapper-grouper-commercial",
    "south-atlantic-snapper-grouper-charter-headboat",
];
const LONGLINES: &[&str] = &["pelagic-longline", "bottom-longline"];
const IN_2009: &[(&str, bool)] =
    &[("2008-12-31", false), ("2009-01-01", true), ("2024-11-28", true), ("2024-11-29", false)];
const SINCE_2024: &[(&str, bool)] = &[("2024-11-28", false), ("2024-11-29", true)];

/// 635.21(c)(5), (d)(2)(i) (read); 622.273(a) (read); 622.29(a)(1) (read);
/// 622.179(a)(1) (read). Item (M) since 1 January 2009, 89 FR 85879 in force
/// on 29 November 2024 and 84 FR 67236 on 8 January 2020: from excerpts. That
/// 84 FR 22383 took effect in June 2019 is from memory, so that month belongs
/// to no edition.
pub(crate) fn bindings() -> [Binding; 8] {
    let row = |profile, permits, gears, days| Binding { profile, permits, gears, days };
    let hms: &[&str] = &["atlantic-hms"];
    let dolphin: &[&str] = &["dolphin-wahoo-commercial"];
    let pelagic: &[&str] = &["pelagic-longline"];
    let hooks: &[&str] = &["hook-and-line"];
    [
        row(ATLANTIC, hms, LONGLINES, IN_2009),
        row("us-atlantic-longline-2024", hms, LONGLINES, SINCE_2024),
        row(DOLPHIN, dolphin, pelagic, IN_2009),
        row("us-dolphin-wahoo-longline-2024", dolphin, pelagic, SINCE_2024),
        row(OLD_GULF, REEF_FISH, &[], &[("2019-05-31", true), ("2019-06-01", false)]),
        row(GULF, REEF_FISH, &[], &[("2019-06-30", false), ("2019-07-01", true)]),
        row(
            "us-south-atlantic-snapper-grouper-before-2020",
            SNAPPER_GROUPER,
            hooks,
            &[("2020-01-07", true), ("2020-01-08", false)],
        ),
        row(SOUTH, SNAPPER_GROUPER, hooks, &[("2020-01-07", false), ("2020-01-08", true)]),
    ]
}
