//! The inspection record of a sheet with its rows still empty, as YAML.
//!
//! Imports `model` and the words beside it. As it is printed it is refused,
//! since it has no day; with its day alone it adds nothing to a vessel.

use super::asks::for_a_file;
use super::digest::Digest;
use super::rows::{self, Group, Row, Thing};
use super::shared::{has_stubs, laid_over, named_rules};
use super::yaml::{File, scalar};
use crate::model::check::Check;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Tool, Vessel};
use crate::model::vocabulary::Class;
use crate::report::words::sheet as said;
use crate::report::{Locale, Subject};

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
    let (check, locale) = (subject.check, subject.locale);
    file.comment(0, &locale.sheet_record(&check.vessel.name, digest));
    if let Some(laid) = laid_over(subject) {
        file.comment(0, &locale.sheet_written_with(&laid));
    }
    if check.judgements.len() > 1 {
        named_rules(subject).iter().for_each(|rule| file.comment(0, rule));
    }
    file.comment(0, locale.sheet_key_in());
    file.line("format: inspection/1");
    file.line(&format!("vessel: {}", scalar(&check.vessel.name)));
    file.line(&format!("sheet: {digest}"));
    file.key(0, "on", "", locale.sheet_day_of_walk());
    file.key(0, "by", "", locale.sheet_inspector_name());
    file.key(0, "figures", "measured", locale.sheet_or_stated_or_label());
    file.key(0, "covers", "listed things only", locale.sheet_or_whole_kit());
    freeboard(file, &check.vessel, locale);
    file.gap();
}

/// The freeboard, or that of each station that has a name.
fn freeboard(file: &mut File, vessel: &Vessel, locale: Locale) {
    let from = vessel.freeboard.from;
    let like = match from {
        FreeboardFrom::Rail => locale.sheet_like_one_rail(),
        FreeboardFrom::Deck => locale.sheet_like_deck(),
    };
    let how = locale.sheet_freeboard_like(&said::freeboard_box(from, locale), &like);
    let stations = &vessel.freeboard.stations;
    if stations.iter().all(|station| station.name.is_none()) {
        return file.key(0, "freeboard", "", &how);
    }
    file.comment(0, &locale.sheet_take_away(&how));
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
        let locale = self.subject.locale;
        file.comment(2, &format!("--- {}", group.place));
        for row in &group.rows {
            match row.thing {
                Thing::Tool(tool) => self.tool(file, row, tool),
                Thing::LookFor => self.look_for(file, row),
                Thing::Gear(piece) => {
                    let text = locale.sheet_row_in_file(&row.number, &piece.name);
                    file.comment(2, &text);
                }
                Thing::Holders(_) => {
                    file.comment(2, &locale.sheet_people_in_file(&row.number));
                    self.purpose(file, row, 2);
                }
            }
        }
    }

    fn tool(&self, file: &mut File, row: &Row<'_>, tool: &Tool) {
        let locale = self.subject.locale;
        let kind = self.subject.vocabulary.kind(tool.kind);
        file.line(&format!("  - row: {}", row.number));
        file.line(&format!("    mark: {}", scalar(&tool.mark)));
        file.key(4, "kind", &scalar(&kind.id), "");
        self.purpose(file, row, 4);
        if !row.asks.notes.is_empty() {
            file.comment(4, &row.asks.notes.join("; "));
        }
        file.key(4, "missing", "", locale.sheet_missing());
        if kind.class != Class::Document {
            file.key(4, "condition", "", locale.sheet_condition());
        }
        if row.several {
            file.key(4, "count", "", locale.sheet_count_them());
        }
        if tool.expires.is_some() {
            file.key(4, "expires", "", locale.sheet_label_day());
        }
        for ask in &row.asks.list {
            let id = &self.subject.vocabulary.attribute(ask.attribute).id;
            file.key(4, id, "", &for_a_file(ask, self.subject.vocabulary, locale));
        }
        file.key(4, "remark", "", "");
    }

    /// Something that is not on the list: a mark has to be given to it first.
    fn look_for(&self, file: &mut File, row: &Row<'_>) {
        let locale = self.subject.locale;
        file.comment(2, &locale.sheet_row_look_for(&row.number));
        self.purpose(file, row, 2);
        file.comment(2, &row.asks.notes.join("; "));
        file.comment(2, locale.sheet_if_there());
        file.line(&format!("  # - row: {}", row.number));
        file.line("  #   mark:");
        file.line("  #   kind:");
        file.line("  #   condition:");
        for ask in &row.asks.list {
            let attribute = self.subject.vocabulary.attribute(ask.attribute);
            file.key_in(
                2,
                "#   ",
                &attribute.id,
                "",
                &for_a_file(ask, self.subject.vocabulary, locale),
            );
        }
    }

    /// What the row is for, as a comment.
    fn purpose(&self, file: &mut File, row: &Row<'_>, indent: usize) {
        let locale = self.subject.locale;
        if row.serves.is_empty() {
            let told = said::not_asked(has_stubs(self.subject.check), locale);
            return file.comment(indent, told);
        }
        let told = row.serves.iter().map(|serves| {
            let more = serves.more.iter().map(|more| format!("; {more}")).collect::<String>();
            format!("{} ({}){more}", serves.title, serves.cited(locale))
        });
        let told = told.collect::<Vec<_>>().join(" / ");
        file.comment(indent, &format!("{} {told}", locale.sheet_for_these()));
    }
}
