//! What this project is built from: the lock file held to the lists of
//! `deny.toml`, and every direct dependency explained in `Cargo.toml`.

use crate::run::home;
use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;
use toml::{Table, Value};

fn read(name: &str) -> String {
    std::fs::read_to_string(home().join(name)).unwrap()
}

fn table(name: &str) -> Table {
    read(name).parse().unwrap_or_else(|e| panic!("{name}: {e}"))
}

fn texts<'a>(table: &'a Table, path: &[&str]) -> BTreeSet<&'a str> {
    let (last, way) = path.split_last().unwrap();
    let within = way.iter().fold(table, |t, key| t[*key].as_table().unwrap());
    within[*last].as_array().unwrap().iter().map(|text| text.as_str().unwrap()).collect()
}

/// A crate that is built somewhere: name, version, licence.
type Built = (String, String, String);

/// Every crate that is built on any platform, for the program or its tests.
fn built() -> BTreeSet<Built> {
    let output = Command::new(env!("CARGO"))
        .args(["tree", "--locked", "--target", "all", "--all-features", "--edges"])
        .args(["normal,build,dev", "--prefix", "none", "--format", "{p}\t{l}"])
        .current_dir(home())
        .output()
        .unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = String::from_utf8(output.stdout).unwrap();
    let line = |line: &str| {
        let (package, licence) = line.trim_end_matches(" (*)").split_once('\t')?;
        let mut words = package.split(' ');
        let (name, version) = (words.next()?, words.next()?.strip_prefix('v')?);
        Some((name.to_owned(), version.to_owned(), licence.trim().to_owned()))
    };
    text.lines().filter_map(line).collect()
}

/// The names of the direct dependencies, as the registry calls them.
fn direct(manifest: &Table) -> BTreeSet<String> {
    let named = |(key, value): (&String, &Value)| match value.get("package") {
        Some(name) => name.as_str().unwrap().to_owned(),
        None => key.clone(),
    };
    ["dependencies", "dev-dependencies", "build-dependencies"]
        .into_iter()
        .filter_map(|part| manifest.get(part)?.as_table())
        .flat_map(|part| part.iter().map(named))
        .collect()
}

#[test]
fn every_crate_is_under_a_licence_that_is_allowed() {
    let deny = table("deny.toml");
    let allowed = texts(&deny, &["licenses", "allow"]);
    let allows = |wanted: &spdx::LicenseReq| allowed.contains(wanted.to_string().as_str());
    let crates = built();
    assert!(crates.len() > 100, "only {} crates were seen", crates.len());
    for (name, version, licence) in crates {
        let read = spdx::Expression::parse_mode(&licence, spdx::ParseMode::LAX);
        let read = read.unwrap_or_else(|e| panic!("{name} {version}: `{licence}`: {e}"));
        assert!(read.evaluate(allows), "{name} {version} is under `{licence}`");
    }
}

#[test]
fn two_versions_of_one_crate_are_explained() {
    let deny = table("deny.toml");
    let skipped: BTreeSet<&str> = deny["bans"]["skip"]
        .as_array()
        .unwrap()
        .iter()
        .map(|skip| {
            assert!(skip["reason"].as_str().is_some_and(|reason| reason.len() > 10), "{skip:?}");
            skip["crate"].as_str().unwrap()
        })
        .collect();
    let mut versions: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for (name, version, _) in built() {
        versions.entry(name).or_default().insert(version);
    }
    let is_skipped = |name: &str, version: &str| {
        skipped.iter().any(|skip| {
            skip.strip_prefix(name).and_then(|rest| rest.strip_prefix('@')).is_some_and(|of| {
                version
                    .strip_prefix(of)
                    .is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
            })
        })
    };
    let mut used = 0;
    for (name, versions) in &versions {
        let left: Vec<_> = versions.iter().filter(|v| !is_skipped(name, v)).collect();
        used += versions.len() - left.len();
        assert!(left.len() < 2, "{name} is built in {} versions: {left:?}", versions.len());
        assert!(
            versions.len() > 1 || !left.is_empty(),
            "{name} is built in one version: deny.toml need not name it"
        );
    }
    assert_eq!(used, skipped.len(), "deny.toml names a version that is not built: {skipped:?}");
}

#[test]
fn everything_comes_from_the_registry_with_a_checksum() {
    let deny = table("deny.toml");
    let registries = texts(&deny, &["sources", "allow-registry"]);
    assert!(texts(&deny, &["sources", "allow-git"]).is_empty());
    let lock = table("Cargo.lock");
    for package in lock["package"].as_array().unwrap() {
        let name = package["name"].as_str().unwrap();
        if name == "kitmuster" {
            assert!(package.get("source").is_none());
            continue;
        }
        let source = package.get("source").and_then(Value::as_str).unwrap_or("a folder");
        let known = source.strip_prefix("registry+").is_some_and(|at| registries.contains(at));
        assert!(known, "{name} comes from {source}");
        assert!(package.get("checksum").is_some(), "{name} has no checksum");
    }
}

/// `*` would take whatever is published next.
#[test]
fn every_direct_dependency_names_its_version() {
    let manifest = table("Cargo.toml");
    for part in ["dependencies", "dev-dependencies"] {
        for (name, how) in manifest[part].as_table().unwrap() {
            let version = how.as_str().or_else(|| how.get("version")?.as_str());
            let plain = version.is_some_and(|v| v.starts_with(|c: char| c.is_ascii_digit()));
            assert!(plain, "{name} = {how:?}");
        }
    }
}

/// It stands above the line of the dependency.
#[test]
fn every_direct_dependency_has_its_reason() {
    let manifest = read("Cargo.toml");
    let lines: Vec<_> = manifest.lines().collect();
    let mut told: BTreeSet<String> = BTreeSet::new();
    for pair in lines.windows(2) {
        let Some(reason) = pair[0].strip_prefix("# ") else { continue };
        let Some((name, how)) = pair[1].split_once(" = ") else { continue };
        assert!(reason.len() >= 5, "no reason: {name}");
        let package = how.split_once("package = \"").and_then(|(_, rest)| rest.split_once('"'));
        told.insert(package.map_or(name, |(package, _)| package).to_owned());
    }
    let direct = direct(&table("Cargo.toml"));
    assert_eq!(direct.difference(&told).collect::<Vec<_>>(), Vec::<&String>::new(), "no reason");
}

#[test]
fn unsafe_code_is_forbidden_for_the_whole_crate() {
    let manifest = table("Cargo.toml");
    assert_eq!(manifest["lints"]["rust"]["unsafe_code"].as_str(), Some("forbid"));
}
