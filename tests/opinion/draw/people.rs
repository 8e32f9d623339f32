//! Who is aboard, and the certificates they hold.

use super::Draw;
use crate::figures::written;
use std::fmt::Write as _;

impl Draw<'_> {
    pub(super) fn people(&mut self) -> String {
        if self.chance.in_thousand(40) {
            return String::new();
        }
        if self.chance.in_thousand(20) {
            return "people: []\n".to_owned();
        }
        let mut text = "people:\n".to_owned();
        let roles: &[&str] = self.chance.one_of::<&[&str]>(&[
            &["owner, operator"],
            &["owner", "operator"],
            &["owner, operator", "operator"],
            &["owner", "crew"],
        ]);
        let spoilt = self.chance.in_thousand(300);
        for (number, roles) in roles.iter().enumerate() {
            let mut issued = format!(", issued: {}", written(self.near_day(1)));
            let mut expires = String::new();
            if spoilt {
                let day = match self.chance.below(6) {
                    0 => None,
                    1 => Some(self.near_day(0)),
                    _ => Some(self.near_day(3)),
                };
                issued = day.map(|d| format!(", issued: {}", written(d))).unwrap_or_default();
                if self.chance.in_thousand(400) {
                    let ends = self.near_day(0).max(day.unwrap_or(0));
                    expires = format!(", expires: {}", written(ends));
                }
            }
            let certificate = format!("{{ kind: workshop certificate{issued}{expires} }}");
            let certificates =
                if spoilt && self.chance.in_thousand(150) { String::new() } else { certificate };
            let _ = writeln!(
                text,
                "  - {{ name: Person {number}, roles: [{roles}], certificates: [{certificates}] }}"
            );
        }
        text
    }
}
