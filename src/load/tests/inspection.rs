//! Tests of the path from an inspection record to the model, on small texts
//! of their own.

use crate::load::read::problem::Refusal;
use crate::load::read_inspection;
use crate::load::tests::vessel::{day, words};
use crate::model::inspection::Inspection;
use crate::model::vessel::How;

const RECORD: &str = "\
format: inspection/1
vessel: Example
on: 2026-02-20
by: A. Inspector
counts as inspection due: yes
sought and not found: [pliers]
freeboard: { value: 4 ft 2 in, by: B. Other }
found:
  - mark: LC-1
    handle: 6 ft 3 in
    condition: serviceable
    mended:
      - { what: lengthened, handle: 6 ft 5 in }
      - { what: repaired, on: 2026-02-21 }
  - mark: XX-9
    kind: pliers
    count: 0
  - mark: PL-1
    missing: yes
";

fn record(text: &str) -> Result<Inspection, Refusal> {
    read_inspection("r.yaml", text, &words()).map(|(record, _)| record)
}

#[test]
fn an_inspection_record_is_read() {
    let record = record(RECORD).unwrap();
    assert!(record.renews && !record.coverage.everything);
    assert_eq!(record.coverage.all_seen.len(), 1);
    let first = &record.found[0];
    assert_eq!(first.attributes[0].1[0].on, day("2026-02-20"));
    assert_eq!(first.attributes[0].1[0].how, How::Measured);
    assert_eq!(first.mended[0].0.on, record.on);
    assert_eq!(first.mended[0].1.len(), 1);
    assert_eq!(Some(first.mended[1].0.on), day("2026-02-21"));
    assert_eq!(record.found[1].count, Some(0));
    assert!(record.found[2].missing);
    let freeboard = record.freeboard.unwrap();
    assert_eq!(freeboard.stations[0].readings[0].on, day("2026-02-20"));
}

#[test]
fn a_faulty_record_is_refused() {
    for (from, to, told) in [
        ("on: 2026-02-20\n", "", "`on` is missing"),
        ("vessel: Example\n", "", "`vessel` is missing"),
        ("handle: 6 ft 3 in", "hnadle: 6 ft 3 in", "did you mean `handle`"),
        ("mark: XX-9", "mark: LC-1", "written twice in the record"),
        ("missing: yes", "missing: yes\n    overall: 11 in", "a missing tool was measured"),
        ("what: lengthened", "what: longer", "no such change is known"),
        (
            "format: inspection/1",
            "format: vessel/1",
            "this is a vessel's inventory; expected an inspection record",
        ),
        ("format: inspection/1", "format: inspection/9", "this format is not known here"),
        ("format: inspection/1\n", "", "`format` is missing"),
    ] {
        assert!(RECORD.contains(from), "{from}");
        let refusal = record(&RECORD.replacen(from, to, 1)).unwrap_err();
        assert!(refusal.to_string().contains(told), "{to}: {refusal}");
        assert_eq!(refusal.problems.len(), 1, "{to}: {refusal}");
    }
}
