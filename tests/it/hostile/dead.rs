//! What may never stand in anything that the program prints, whoever wrote
//! the file: what steers a terminal, turns the reading direction, runs in a
//! browser or is reckoned by a spreadsheet.

use crate::run::Ran;
use scraper::{Html, Selector};

/// Whether a character does something instead of being seen. Written from
/// Unicode's tables (general categories Cc and Cf, line and paragraph
/// separators, blank fillers), not from the program.
fn is_steering(c: char) -> bool {
    (c.is_control() && c != '\n')
        || matches!(c, '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{feff}' | '\u{2028}' | '\u{2029}')
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}')
        || matches!(c, '\u{2060}'..='\u{2064}' | '\u{2066}'..='\u{206f}')
        || matches!(c, '\u{fff9}'..='\u{fffb}' | '\u{e0001}' | '\u{e0020}'..='\u{e007f}')
        || matches!(c, '\u{115f}' | '\u{1160}' | '\u{3164}' | '\u{ffa0}')
}

/// Words that stand in no message of ours: they come of a slip of the
/// program, not of a file.
const SLIPS: [&str; 5] =
    ["panicked", "RUST_BACKTRACE", "memory allocation", "attempt to", "unwrap"];

/// Refuses what is live in what was printed, in whatever format.
pub(crate) fn refuse_live(what: &str, ran: &Ran) -> Result<(), String> {
    let csv = ran.stdout.starts_with("file,vessel,") || ran.stdout.starts_with("row,supplier,");
    // Rows of a CSV end as RFC 4180 says.
    let rows = if csv { ran.stdout.replace("\r\n", "\n") } else { ran.stdout.clone() };
    for (stream, text) in [("stdout", &rows), ("stderr", &ran.stderr)] {
        if let Some(c) = text.chars().find(|c| is_steering(*c)) {
            return Err(format!("{what}: {} in {stream}", c.escape_unicode()));
        }
        if let Some(slip) = SLIPS.iter().find(|slip| text.contains(**slip)) {
            return Err(format!("{what}: `{slip}` in {stream}: {text:.500}"));
        }
    }
    if csv {
        return refuse_formulas(what, &ran.stdout);
    }
    if ran.stdout.starts_with("<!DOCTYPE html>") {
        return refuse_elements(what, &ran.stdout);
    }
    Ok(())
}

/// No cell begins as a formula does, blanks before it or not.
fn refuse_formulas(what: &str, text: &str) -> Result<(), String> {
    let mut rows = csv::ReaderBuilder::new().flexible(true).from_reader(text.as_bytes());
    for row in rows.records() {
        let row = row.map_err(|error| format!("{what}: no CSV: {error}"))?;
        for cell in &row {
            if cell
                .trim_start()
                .starts_with(['=', '+', '-', '@', '\t', '\r', '\u{ff1d}', '\u{ff0b}'])
            {
                return Err(format!("{what}: a live cell `{cell}`"));
            }
        }
    }
    Ok(())
}

/// Attributes that load, run or lead away.
const LIVE: [&str; 9] = [
    "src",
    "srcset",
    "style",
    "action",
    "formaction",
    "data",
    "xlink:href",
    "srcdoc",
    "background",
];

/// No element runs, loads or leads away, and no style but our own.
fn refuse_elements(what: &str, text: &str) -> Result<(), String> {
    let page = Html::parse_document(text);
    let all = Selector::parse("*").unwrap();
    let mut styles = 0;
    for element in page.select(&all) {
        let value = element.value();
        let name = value.name();
        styles += usize::from(name == "style");
        if ["script", "iframe", "object", "embed", "img", "link", "base", "form", "foreignobject"]
            .contains(&name.to_lowercase().as_str())
        {
            return Err(format!("{what}: a live element <{name}>"));
        }
        for (key, content) in value.attrs() {
            let leads = key == "href" && !content.starts_with('#');
            if key.starts_with("on") || LIVE.contains(&key) || leads {
                return Err(format!("{what}: a live attribute {key}={content}"));
            }
        }
    }
    if styles > 1 {
        return Err(format!("{what}: {styles} elements of style"));
    }
    Ok(())
}

#[test]
fn what_is_live_is_seen() {
    let ran = |stdout: &str| Ran { status: 0, stdout: stdout.to_owned(), stderr: String::new() };
    let html = |body: &str| format!("<!DOCTYPE html><html><style>a{{}}</style>{body}");
    let live = [
        "a\u{1b}[31m".to_owned(),
        "a\u{9b}2J".to_owned(),
        "a\u{7f}".to_owned(),
        "a\rb".to_owned(),
        "a\u{202e}b".to_owned(),
        "thread panicked".to_owned(),
        "file,vessel,a\r\n\" =1\",b,c\r\n".to_owned(),
        "file,vessel,a\r\nx,+1,c\r\n".to_owned(),
        html("<script>1</script>"),
        html("<b onclick=x>"),
        html("<a href=javascript:1>"),
        html("<style>b{}</style>"),
        html("<svg><foreignObject></svg>"),
    ];
    for text in live {
        assert!(refuse_live("x", &ran(&text)).is_err(), "{text:?}");
    }
    for text in ["a\nb – ½", "file,vessel,a\r\n'=1,b,c\r\n", &html("<a href='#b'>&lt;script&gt;")]
    {
        assert_eq!(refuse_live("x", &ran(text)), Ok(()), "{text:?}");
    }
}
