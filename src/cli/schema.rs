//! The command `schema`: the JSON Schema of a file that is read, or of the
//! JSON that is written.
//!
//! Imports `report`.

use super::arguments::SchemaArguments;
use super::exit::Exit;
use super::output;
use super::stop::Stop;
use crate::report::desk;
use crate::report::wire::schema::{FORMATS, Format, list};

/// Prints one schema, or lists what there are schemas of.
pub(super) fn run(arguments: &SchemaArguments) -> Result<Exit, Stop> {
    let text = match &arguments.name {
        None => list(),
        Some(name) => {
            let told = find(name)?.json();
            told.map_err(|error| Stop::usage(desk::command_no_schema_form(&error), ""))?
        }
    };
    match &arguments.output {
        Some(path) => output::write_form(path, &text, arguments.force)?,
        None => output::print(&text)?,
    }
    Ok(Exit::Ready)
}

/// The format of that name; `vessel/1` and `kitmuster/check/1`, as they stand
/// in files, do as well.
fn find(typed: &str) -> Result<&'static Format, Stop> {
    let name = typed.trim().to_lowercase();
    let name = name.strip_prefix("kitmuster/").unwrap_or(&name);
    let is = |format: &&Format| format.name == name || format.version == name;
    FORMATS.iter().find(is).ok_or_else(|| unknown(typed, name))
}

/// That nothing has this name, with the nearest one that there is.
fn unknown(typed: &str, name: &str) -> Stop {
    let distances = FORMATS.iter().map(|f| (strsim::osa_distance(name, f.name), f.name));
    let near = distances.filter(|(distance, near)| *distance <= 2.min(near.len() / 2));
    let mend = match near.min_by_key(|(distance, _)| *distance) {
        Some((_, near)) => desk::command_did_you_mean(&format!("`{near}`")),
        None => desk::command_schemas_listed().to_owned(),
    };
    Stop::usage(desk::command_no_schema(&typed), mend)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_format_is_found_by_its_name_and_as_files_name_it() {
        for typed in ["vessel", "vessel/1", "kitmuster/audit-line/1", "Check"] {
            assert!(find(typed).is_ok(), "{typed}");
        }
        let told = |typed| match find(typed) {
            Err(Stop::Usage { mend, .. }) => mend,
            other => panic!("{other:?}"),
        };
        assert_eq!(told("vesel"), "did you mean `vessel`?");
        assert_eq!(told("catalog"), "did you mean `catalogue`?");
        assert_eq!(told("vessel/2"), "did you mean `vessel`?");
        assert_eq!(told("boat"), "`kitmuster schema` lists them");
    }
}
