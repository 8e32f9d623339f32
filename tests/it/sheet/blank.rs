//! The empty inventory of every shipped profile, and one filled in.

use crate::run::{home, kitmuster, write};

fn blank(profile: &str) -> String {
    let ran = kitmuster(&["sheet", "--blank-vessel", profile]);
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""), "{profile}");
    ran.stdout
}

/// The ids of the shipped profiles that are encoded.
fn encoded() -> Vec<String> {
    let mut ids = Vec::new();
    for entry in std::fs::read_dir(home().join("requirements")).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let is_profile = name != "vocabulary" && name != "techniques";
        if path.extension().is_none_or(|e| e != "yaml") || !is_profile {
            continue;
        }
        let text = std::fs::read_to_string(&path).unwrap();
        if !text.contains("\nencoded: no") {
            ids.push(name);
        }
    }
    ids.sort();
    assert!(ids.len() >= 6, "{ids:?}");
    ids
}

#[test]
fn an_empty_inventory_reads_so() {
    insta::assert_snapshot!(blank("us-gulf-reef-fish-2019"));
}

#[test]
fn under_every_profile_an_empty_inventory_loads_and_proves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    // A day on which each edition is in force, so that dated requirements are
    // asked too.
    let days = ["2010-01-15", "2020-03-01", "2024-02-12", "2026-12-02"];
    let mut findings = 0;
    for profile in encoded() {
        let path = write(folder.path(), "blank.yaml", &blank(&profile));
        for day in days {
            let ran = kitmuster(&[
                "check",
                &path,
                "--profile",
                &profile,
                "--on",
                day,
                "--return",
                day,
                "--format",
                "json",
            ]);
            assert_eq!(ran.status, 1, "{profile}: {}", ran.stderr);
            let json = ran.json();
            assert_eq!(json["verdict"], "cannot-tell", "{profile} {day}");
            for finding in json["profiles"][0]["findings"].as_array().unwrap() {
                let what = &finding["requirement"];
                assert_eq!(finding["outcome"], "cannot-tell", "{profile} {day}: {what}");
                findings += 1;
            }
        }
    }
    assert!(findings > 300, "{findings}");
}

#[test]
fn no_least_is_printed_smaller_than_it_is() {
    // 6 ft is 1.8288 m, which rules print as (1.8 m), (1.83 m) or not at all;
    // `about` 4 to 6 in, within 1/2 in, ends at 3.5 in, which is 88.9 mm, and
    // at 6.5 in, which is 165.1 mm.
    let mut seen = 0;
    for profile in encoded() {
        let text = blank(&profile);
        let plain = text.split_whitespace().filter(|w| *w != "#").collect::<Vec<_>>().join(" ");
        assert!(
            !plain.contains("6 ft (1.8 m)") && !plain.contains("about 4 in (101 mm)"),
            "{profile}"
        );
        seen += plain.matches("150 % of freeboard and 6 ft (1.829 m)").count();
        seen +=
            plain.matches("about 4 in (102 mm) to 6 in (152 mm), within 1/2 in (12.7 mm)").count();
    }
    assert!(seen > 5, "{seen}");
}

#[test]
fn every_requirement_stands_in_the_file_with_its_clause() {
    let folder = tempfile::tempdir().unwrap();
    for profile in encoded() {
        let text = blank(&profile);
        let plain = text.split_whitespace().filter(|w| *w != "#").collect::<Vec<_>>().join(" ");
        let path = write(folder.path(), "blank.yaml", &text);
        let check = kitmuster(&["check", &path, "--profile", &profile, "--format", "json"]).json();
        for finding in check["profiles"][0]["findings"].as_array().unwrap() {
            for part in [&finding["title"], &finding["citation"]["clause"]] {
                let part = part.as_str().unwrap();
                assert!(plain.contains(part), "{profile}: {part}");
            }
        }
        assert!(text.lines().all(|line| line.chars().count() <= 80), "{profile}");
    }
}

#[test]
fn an_alternative_with_the_number_signs_taken_away_loads() {
    let folder = tempfile::tempdir().unwrap();
    for profile in encoded() {
        let text = blank(&profile);
        let (head, rest) = text.split_once("\nkit:\n").unwrap();
        let (tools, foot) = rest.split_once("\nhooks:").unwrap();
        let taken_away = |line: &str| {
            let block = line.starts_with("  # - mark:") || line.starts_with("  #   ");
            if block { line.replacen("# ", "", 1) } else { line.to_owned() }
        };
        let tools: Vec<_> = tools.lines().map(taken_away).collect();
        let open = format!("{head}\nkit:\n{}\nhooks:{foot}", tools.join("\n"));
        let path = write(folder.path(), "open.yaml", &open);
        let ran = kitmuster(&["check", &path, "--profile", &profile]);
        assert_eq!(ran.status, 1, "{profile}: {}\n{open}", ran.stderr);
    }
}

/// What a skipper writes behind each colon for the 2019 edition of the Gulf:
/// figures that meet Appendix F at a freeboard of 4 ft 3 in.
fn written(kind: &str, key: &str) -> Option<&'static str> {
    let value = match (kind, key) {
        (_, "condition") => "serviceable",
        ("dip net", "handle") => "6 ft 4 1/2 in",
        (_, "handle") => "8 ft",
        (_, "cuts-monofilament") => "2.1 mm",
        (_, "rod") => "1/4 in",
        ("block of hard wood", "thickness") => "3/4 in",
        ("block of hard wood", "width") => "1 in",
        ("block of hard wood", "length") => "10 in",
        (_, "material") => "316L",
        (_, "end-diameter") => "1 3/4 in",
        (_, "end") => "boat hook",
        (_, "hoop-inside") => "31 in",
        (_, "bag-depth") => "38 in",
        (_, "mesh") => "3 in",
        (_, "carries") => "100 lb",
        (_, "shaft") => "18 in",
        (_, "t-handle" | "bite-block-length") => "5 in",
        (_, "bite-block-inside") => "3/4 in",
        (_, "bite-block-slide") => "5 in",
        ("bolt cutters", "overall") => "14 in",
        ("monofilament line cutters", "overall") => "6 in",
        (_, "overall") => "11 in",
        ("bolt cutters", "blade-length") => "4 in",
        ("bolt cutters", "blade-width") => "2 1/4 in",
        (_, "blade-length") => "1 in",
        (_, "blade-width") => "5/8 in",
        (_, "cuts-hook") => "1/4 in",
        (_, "edition") => "\"2019\"",
        (_, "form") => "paper",
        (_, "kept") => "wheelhouse",
        (_, "state") => "posted",
        (
            _,
            "protected-blade"
            | "blades-replaceable"
            | "cuts-poly-mainline"
            | "shields-point"
            | "controls-leader"
            | "no-unprotected-points"
            | "sized-for-hooks"
            | "blunt-end"
            | "securely-attached"
            | "no-sharp-edges"
            | "no-steel-belts"
            | "sized-for-turtles"
            | "bite-block-installed"
            | "bite-block-plastic"
            | "no-splinters"
            | "smooth-edges",
        ) => "yes",
        ("", "name") => "Filled In",
        ("", "freeboard") => "4 ft 3 in",
        ("", "permits") => "[gulf-reef-fish-commercial]",
        ("", "gear") => "[bottom-longline]",
        ("", "areas") => "[gulf-of-mexico]",
        ("", "wheelhouse") => "yes",
        ("", "depart") => "2026-12-02",
        ("", "return") => "2026-12-09",
        ("", "covers") => "whole kit",
        ("", "hooks") => "[{ name: circle hooks, wire: 4.5 mm }]",
        _ => return None,
    };
    Some(value)
}

#[test]
fn filling_it_in_makes_it_ready() {
    let folder = tempfile::tempdir().unwrap();
    let text = blank("us-gulf-reef-fish-2019");
    let (mut out, mut kind, mut gags) = (String::new(), String::new(), 0);
    for line in text.lines() {
        let bare = line.split_once("  #").map_or(line, |(bare, _)| bare);
        let Some((key, value)) = bare.trim_start().split_once(':') else {
            out.push_str(&format!("{line}\n"));
            continue;
        };
        if key == "kind" {
            kind = value.trim().to_owned();
        }
        let top = !line.starts_with("    ") || key == "hooks" || key == "lines";
        let of = if top { "" } else { kind.as_str() };
        let gag = ["5 in", "6 in", "7 in"];
        let value = match key {
            "nominal-size" => {
                gags += 1;
                gag.get(gags - 1).copied()
            }
            key => written(of, key),
        };
        let empty = bare.trim_end().ends_with(':') || ["name", "covers"].contains(&key);
        out.push_str(&match value.filter(|_| empty && !line.trim_start().starts_with('#')) {
            Some(value) => {
                let head = &bare[..bare.find(':').unwrap()];
                format!("{head}: {value}\n")
            }
            None => format!("{line}\n"),
        });
    }
    let path = write(folder.path(), "filled.yaml", &out);
    for arguments in
        [vec!["check", &path, "--profile", "us-gulf-reef-fish-2019"], vec!["check", path.as_str()]]
    {
        let ran = kitmuster(&arguments);
        assert_eq!(ran.status, 0, "{}\n{}\n{out}", ran.stdout, ran.stderr);
        assert!(ran.stdout.starts_with("READY"), "{}", ran.stdout);
    }
}
