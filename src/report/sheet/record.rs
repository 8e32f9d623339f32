//! The inspection record of a sheet with its rows still empty, as YAML.
//!
//! Imports `model` and the words beside it. As it is printed it is refused,
//! since it has no day; with its day alone it adds nothing to a vessel.

use super::asks::for_a_file;
use super::digest::Digest;
use super::rows::{self, Group, Row, Thing};
use super::yaml::{File, scalar};
use super::{laid_over, named_rules};
use crate::model::check::Check;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Tool, Vessel};
use crate::model::vocabulary::Class;
use crate::report::Subject;
use crate::report::words::sheet as said;

/// The record as a file.
pub(super) fn yaml(subject: &Subject<'_>, above: Option<&Check>, digest: &Digest) -> String {
    let groups = rows::groups(subject, above);
    let mut file = File::default();
    head(&mut file, subject, digest);
    let numbered = groups
        .iter()
        .any(|group| group.rows.iter().any(|row| matches!(row.thing, Thing::Tool(..))));
    file.line(if numbered { "found:" } else { "found: []" });
    let writer = Writer { subject };
    groups.iter().for_each(|group| writer.group(&mut file, group));
    file.finish()
}

fn head(file: &mut File, subject: &Subject<'_>, digest: &Digest) {
    let check = subject.check;
    file.comment(0, &format!("Inspection record of {}, sheet {digest}.", check.vessel.name));
    if let Some(laid) = laid_over(subject) {
        file.comment(0, &format!("It was written with this {laid}."));
    }
    if check.judgements.len() > 1 {
        named_rules(check).iter().for_each(|rule| file.comment(0, rule));
    }
    file.comment(0, said::RECORD);
    file.line("format: inspection/1");
    file.line(&format!("vessel: {}", scalar(&check.vessel.name)));
    file.line(&format!("sheet: {digest}"));
    file.key(0, "on", "", said::DAY_OF_THE_WALK);
    file.key(0, "by", "", "the inspector's name");
    file.key(0, "figures", "measured", "or stated, or label");
    file.key(0, "covers", "listed things only", "or whole kit, if all of it was seen");
    freeboard(file, &check.vessel);
    file.gap();
}

/// The freeboard, or that of each station that has a name.
fn freeboard(file: &mut File, vessel: &Vessel) {
    let from = vessel.freeboard.from;
    let like = match from {
        FreeboardFrom::Rail => "like 4 ft 3 in",
        FreeboardFrom::Deck => "like 3 ft 2 in from the working deck",
    };
    let how = format!("{}; {like}", said::freeboard_box(from));
    let stations = &vessel.freeboard.stations;
    if stations.iter().all(|station| station.name.is_none()) {
        return file.key(0, "freeboard", "", &how);
    }
    file.comment(0, &format!("{how}; take the # away and write it in its place:"));
    file.line("# freeboard:");
    file.line(match from {
        FreeboardFrom::Rail => "#   from: top of the rail",
        FreeboardFrom::Deck => "#   from: working deck",
    });
    file.line("#   stations:");
    for name in stations.iter().filter_map(|station| station.name.as_deref()) {
        file.line(&format!("#     - name: {}", scalar(name)));
        file.line("#       freeboard:");
    }
}

struct Writer<'a> {
    subject: &'a Subject<'a>,
}

impl Writer<'_> {
    fn group(&self, file: &mut File, group: &Group<'_>) {
        file.comment(2, &format!("--- {}", group.place));
        for row in &group.rows {
            match row.thing {
                Thing::Tool(tool) => self.tool(file, row, tool),
                Thing::LookFor => self.look_for(file, row),
                Thing::Gear(piece) => {
                    let text = format!("row {}, {}: {}", row.number, piece.name, said::IN_THE_FILE);
                    file.comment(2, &text);
                }
                Thing::Holders(_) => {
                    file.comment(2, &format!("row {}: {}", row.number, said::IN_THE_FILE));
                    purpose(file, row, 2, self.stubs());
                }
            }
        }
    }

    fn tool(&self, file: &mut File, row: &Row<'_>, tool: &Tool) {
        let kind = self.subject.vocabulary.kind(tool.kind);
        file.line(&format!("  - row: {}", row.number));
        file.line(&format!("    mark: {}", scalar(&tool.mark)));
        file.key(4, "kind", &scalar(&kind.id), "");
        purpose(file, row, 4, self.stubs());
        if !row.asks.notes.is_empty() {
            file.comment(4, &row.asks.notes.join("; "));
        }
        file.key(4, "missing", "", "yes, if it is not there");
        if kind.class != Class::Document {
            file.key(4, "condition", "", "serviceable or broken");
        }
        if row.several {
            file.key(4, "count", "", "how many there are");
        }
        if tool.expires.is_some() {
            file.key(4, "expires", "", "the day on its label, like 2027-05-31");
        }
        for ask in &row.asks.list {
            let id = &self.subject.vocabulary.attribute(ask.attribute).id;
            file.key(4, id, "", &for_a_file(ask, self.subject.vocabulary));
        }
        file.key(4, "remark", "", "");
    }

    /// Whether a rule binds that is not in this program.
    fn stubs(&self) -> bool {
        self.subject.check.judgements.iter().any(|judgement| !judgement.profile.encoded)
    }

    /// Something that is not on the list: a mark has to be given to it first.
    fn look_for(&self, file: &mut File, row: &Row<'_>) {
        file.comment(2, &format!("row {}, look for:", row.number));
        purpose(file, row, 2, self.stubs());
        file.comment(2, &row.asks.notes.join("; "));
        file.comment(2, "if it is there, take the # away and give it a mark:");
        file.line(&format!("  # - row: {}", row.number));
        file.line("  #   mark:");
        file.line("  #   kind:");
        file.line("  #   condition:");
        for ask in &row.asks.list {
            let attribute = self.subject.vocabulary.attribute(ask.attribute);
            file.key_in(2, "#   ", &attribute.id, "", &for_a_file(ask, self.subject.vocabulary));
        }
    }
}

/// What the row is for, as a comment.
fn purpose(file: &mut File, row: &Row<'_>, indent: usize, stubs: bool) {
    if row.serves.is_empty() {
        return file.comment(indent, said::not_asked(stubs));
    }
    let told = row.serves.iter().map(|serves| {
        let more = serves.more.iter().map(|more| format!("; {more}")).collect::<String>();
        format!("{} ({}){more}", serves.title, serves.cited())
    });
    file.comment(indent, &format!("for: {}", told.collect::<Vec<_>>().join(" / ")));
}
