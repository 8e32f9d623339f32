//! Finds out which woven changes the compiler refuses, so that they are left
//! out when the sources are woven once more.

use crate::mutant::Mutant;
use serde_json::Value;
use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;
use std::{fs, io};

/// The changes at the places where the compiler finds an error; empty where
/// it finds none. What it says is added to `why`.
///
/// # Errors
/// Where the compiler cannot be run, or an error stands near no change.
pub fn refused(tree: &Path, mutants: &[Mutant], why: &mut String) -> io::Result<BTreeSet<u32>> {
    let said = Command::new("cargo")
        .args(["check", "--locked", "--lib", "--message-format", "json", "--quiet"])
        .current_dir(tree)
        .output()?;
    let mut refused = BTreeSet::new();
    for message in String::from_utf8_lossy(&said.stdout).lines() {
        let Ok(message) = serde_json::from_str::<Value>(message) else { continue };
        let error = &message["message"];
        if error["level"] != "error" {
            continue;
        }
        let genre = match error["code"]["code"].as_str() {
            Some("E0004") => Some("MatchArm"),
            Some("E0063") => Some("StructField"),
            _ => None,
        };
        let mut found = BTreeSet::new();
        for span in error["spans"].as_array().into_iter().flatten() {
            if span["is_primary"] == true {
                found.append(&mut near(tree, span, genre, mutants)?);
            }
        }
        if found.is_empty() && error["spans"].as_array().is_some_and(|spans| !spans.is_empty()) {
            return Err(io::Error::other(format!("no change is near: {}", error["rendered"])));
        }
        let named = found.iter().map(|n| mutants[*n as usize].name.as_str());
        let named = named.collect::<Vec<_>>().join("\n");
        let said = error["rendered"].as_str().unwrap_or_default();
        why.push_str(&format!("{named}\n{said}\n"));
        refused.append(&mut found);
    }
    Ok(refused)
}

/// The changes that stand nearest to the lines of an error, of one genre
/// alone where the error says of which.
fn near(
    tree: &Path,
    span: &Value,
    genre: Option<&str>,
    mutants: &[Mutant],
) -> io::Result<BTreeSet<u32>> {
    let line = |key: &str| span[key].as_u64().unwrap_or(1) as usize;
    let text = fs::read_to_string(tree.join(span["file_name"].as_str().unwrap_or_default()))?;
    let lines: Vec<&str> = text.lines().collect();
    let of_genre = |n: &u32| genre.is_none_or(|genre| mutants[*n as usize].genre == genre);
    for (before, after) in [(0, 0), (1, 0), (2, 0), (4, 1), (8, 2), (8, 40)] {
        let from = line("line_start").saturating_sub(1 + before);
        let to = (line("line_end") + after).min(lines.len());
        let all = lines[from..to].iter().flat_map(|line| numbers(line));
        let found: BTreeSet<u32> = all.filter(of_genre).collect();
        if !found.is_empty() {
            return Ok(found);
        }
    }
    Ok(BTreeSet::new())
}

fn numbers(line: &str) -> Vec<u32> {
    line.split("mutant(")
        .skip(1)
        .filter_map(|rest| rest.split("u32)").next()?.parse().ok())
        .collect()
}
