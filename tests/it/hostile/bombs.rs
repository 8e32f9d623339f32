//! Files that are small and unfold to more than any memory holds, or that are
//! large, deep, long or many; and those that are as large as may be.

use super::limits::held;
use super::refuse_live;
use super::table::{Case, DAY, GOOD, Kind, and, hold, read, refused, with};

const HEAD: &str = "format: vessel/1\nname: Test Kittiwake\n";

/// Ten aliases of ten aliases, twenty times over.
fn laughs() -> String {
    let mut text = String::from("format: vessel/1\nname: &a0 [x,x,x,x,x,x,x,x,x,x]\n");
    for level in 1..20 {
        let list = vec![format!("*a{}", level - 1); 10].join(",");
        text.push_str(&format!("k{level}: &a{level} [{list}]\n"));
    }
    text
}

fn lines(count: usize, line: impl Fn(usize) -> String) -> String {
    (0..count).map(line).collect()
}

fn tools(count: usize) -> String {
    let tool = |n: usize| {
        format!("  - {{ mark: PL-{n}, kind: pliers, overall: 12 in, condition: serviceable }}\n")
    };
    let head = GOOD.split("  - mark").next().unwrap();
    format!("{head}{}", lines(count, tool))
}

const MANY: &[&str] = &["this file holds more than 200000 values"];
const DEEP: &[&str] = &["brackets are nested too deep"];
const DEEPER: &[&str] = &["nested deeper than 64 levels"];
const TOO_LARGE: &[&str] = &["vessel.yaml: this file is too large", "expected at most 1024 KiB"];
const TOO_LONG: &[&str] = &["this text is too long: `xx", "expected at most 4000 characters"];
const UNFOLDED: &[&str] = &[
    "the aliases here stand for more than 4096 KiB of text",
    "mend: write each text where it belongs",
];

fn aliases() -> Vec<Case> {
    let long = "x".repeat(500_000);
    let folded = format!("{}\n      ", "x".repeat(900)).repeat(500);
    let nested = lines(60, |n| format!("&a{n} ["));
    vec![
        refused("the billion laughs", laughs(), MANY),
        refused(
            "a chain of aliases, each of the one before",
            format!("{HEAD}a0: &a0 [x]\n{}", lines(20_000, |n| {
                format!("k{}: &a{} [*a{n}]\n", n + 1, n + 1)
            })),
            MANY,
        ),
        refused(
            "an alias inside what it stands for",
            format!("{HEAD}kit: &k [ *k ]\n"),
            &["vessel.yaml:3:11: an alias inside the value that it stands for"],
        ),
        refused(
            "an alias of nothing",
            with("[gulf-reef-fish-commercial]", "*none"),
            &["vessel.yaml:4:10:", "an `&` or `*` that names nothing"],
        ),
        refused(
            "a long text and 150 000 aliases of it: 75 GB",
            format!("{HEAD}port: &a {long}\nkit: [{}]\n", "*a,".repeat(150_000)),
            UNFOLDED,
        ),
        refused(
            "the same in short lines, where a list of texts is read",
            format!("{HEAD}permits:\n  - &a {folded}\n{}kit: []\n", "  - *a\n".repeat(70_000)),
            UNFOLDED,
        ),
        refused(
            "sixty anchors around one long list",
            format!("{HEAD}port: {nested}{}{}\n", "x,".repeat(150_000), "]".repeat(60)),
            MANY,
        ),
        refused(
            "one alias, two hundred thousand times",
            format!("format: vessel/1\nname: &n x\nkit: [{}]\n", "*n,".repeat(250_000)),
            MANY,
        ),
        read(
            "aliases as people use them",
            with("12 in", "&a 12 in").replace("serviceable\n", "serviceable\n  - { mark: PL-2, kind: pliers, overall: *a, condition: serviceable }\n"),
            1,
            &["NOT READY"],
        ),
    ]
}

fn depth() -> Vec<Case> {
    let count = 100_000;
    let closed = format!("{}{}", "[".repeat(count), "]".repeat(count));
    let braces = format!("{}{}", "{a: ".repeat(count), "}".repeat(count));
    vec![
        refused("100 000 brackets, closed", and(&format!("port: {closed}\n")), DEEP),
        refused(
            "100 000 brackets, never closed",
            and(&format!("port: {}", "[".repeat(count))),
            DEEP,
        ),
        refused("100 000 braces, closed", and(&format!("port: {braces}\n")), DEEPER),
        refused(
            "100 000 braces, never closed",
            and(&format!("port: {}", "{a: ".repeat(count))),
            DEEPER,
        ),
        refused("100 000 brackets and nothing else", "[".repeat(count), DEEP),
        refused("100 000 dashes in one line", "- ".repeat(count), DEEPER),
        refused("100 000 question marks in one line", "? ".repeat(count), DEEPER),
        refused(
            "100 000 colons in one line",
            "a: ".repeat(count),
            &["vessel.yaml:1:5:", "a colon where none may stand", "mend: indent the line"],
        ),
        refused(
            "1400 levels of indentation",
            and(&format!("port:\n{}", lines(1400, |n| format!("{}a:\n", " ".repeat(n + 1))))),
            DEEPER,
        ),
        refused(
            "1400 levels of lists",
            and(&format!("port:\n{}", lines(1400, |n| format!("{}-\n", " ".repeat(n + 1))))),
            DEEPER,
        ),
    ]
}

fn length() -> Vec<Case> {
    let mega = 1_000_000;
    let x = "x".repeat(mega);
    vec![
        refused("1 000 000 keys", "key: 1\n".repeat(1_000_000), TOO_LARGE),
        refused("as many keys as fit", lines(100_000, |n| format!("k{n}: 1\n")), MANY),
        refused("one line of 10 MB", format!("name: {}", "x".repeat(10 * mega)), TOO_LARGE),
        refused("1 MB of one plain text", and(&format!("port: {x}\n")), TOO_LONG),
        refused("1 MB of one quoted text", and(&format!("port: \"{x}\"\n")), TOO_LONG),
        refused(
            "1 MB of text in lines",
            and(&format!("port: xx\n{}", "  x\n".repeat(250_000))),
            TOO_LONG,
        ),
        refused(
            "1 MB as a key",
            and(&format!("{x}: 1\n")),
            &["vessel.yaml:11:1", "cannot be read as YAML"],
        ),
        refused(
            "1 MB as a key, marked as one",
            and(&format!("? {x}\n: 1\n")),
            &["vessel.yaml:11:3: this text is too long: `xx"],
        ),
        refused(
            "a long key above a long list: 60 GB of key paths",
            and(&format!("? {}\n: [{}]\n", &x[..400_000], "1,".repeat(150_000))),
            &["vessel.yaml:11:3: this text is too long: `xx"],
        ),
        refused(
            "900 unknown keys of 900 characters",
            and(&lines(900, |n| format!("{}{n}: 1\n", "k".repeat(900)))),
            &[
                "vessel.yaml:11:1: no such key is known here: `kkkk",
                "only the first 200 problems are told; there are more",
            ],
        ),
        refused(
            "1 MB of comment and nothing else",
            format!("#{x}"),
            &["vessel.yaml:1:1: nothing is written in this file"],
        ),
        read("a vessel below 1 MB of comment", format!("#{x}\n{GOOD}"), 1, &["NOT READY"]),
        read("a vessel above 1 MB of empty lines", and(&"\n".repeat(mega)), 1, &["NOT READY"]),
        refused(
            "30 000 directives",
            format!("{}---\n{GOOD}", lines(30_000, |n| format!("%TAG !a{n}! tag:x,2000:\n"))),
            &["vessel.yaml:11:1: too many lines that begin with `%`", "expected at most 10"],
        ),
        refused(
            "200 000 documents",
            and(&"---\n".repeat(200_000)),
            &[
                "vessel.yaml:11:1: a second document in one file",
                "mend: write it into a file of its own",
            ],
        ),
    ]
}

fn number() -> Vec<Case> {
    let entries = |key: &str, line: &str, count| and(&format!("{key}:\n{}", line.repeat(count)));
    vec![
        refused(
            "a million tools by their count",
            with("    overall", "    count: 1000000\n    overall"),
            &[
                "vessel.yaml:9:12: out of range: `1000000`",
                "expected a whole number from 1 to 1000",
            ],
        ),
        refused(
            "a million tools, one by one",
            and(&"  - { kind: pliers }\n".repeat(1_000_000)),
            TOO_LARGE,
        ),
        refused(
            "201 tools",
            tools(201),
            &[
                "vessel.yaml:6:1: 201 tools and documents are too many",
                "expected at most 200 on a vessel",
                "mend: write equal tools as one line with a `count`",
            ],
        ),
        refused("12 000 tools", tools(12_000), &["12000 tools and documents are too many"]),
        refused(
            "60 000 tools of which nothing is known",
            format!("{HEAD}freeboard: 3 ft\nkit:\n{}", "  - x: 1\n".repeat(60_000)),
            &["60000 tools and documents are too many", "expected at most 200"],
        ),
        read("200 tools", tools(200), 1, &["NOT READY", "no dip net"]),
        read(
            "200 tools with a remark each, as long as may be",
            tools(200)
                .replace("serviceable }", &format!("serviceable, remark: {} }}", "x".repeat(3900))),
            1,
            &["NOT READY"],
        ),
        refused(
            "60 000 permits",
            with("[gulf-reef-fish-commercial]", &format!("[{}a]", "a, ".repeat(60_000))),
            &["vessel.yaml:4:10: 60001 entries in one list are too many", "expected at most 2000"],
        ),
        refused(
            "60 000 freeboards",
            with("3 ft\n", &format!("[{}3 ft]\n", "3 ft, ".repeat(60_000))),
            &["vessel.yaml:3:12: 60001 entries in one list are too many", "expected at most 2000"],
        ),
        refused(
            "30 000 people",
            entries("people", "  - { name: A }\n", 30_000),
            &["30000 entries in one list are too many"],
        ),
        refused(
            "30 000 lines",
            entries("lines", "  - { name: a }\n", 30_000),
            &["30000 entries in one list are too many"],
        ),
        read(
            "2000 gears that nobody knows",
            and(&format!("gear: [{}]\n", lines(2000, |n| format!("g{n}, ")))),
            1,
            &["NOT READY"],
        ),
        refused(
            "features without end",
            with(
                "{ wheelhouse: yes }",
                &format!("{{ {} }}", lines(1001, |n| format!("f{n}: yes, "))),
            ),
            &["1001 lines in one group are too many", "expected at most 1000"],
        ),
    ]
}

#[test]
fn what_unfolds_without_end_is_refused() {
    hold("aliases", Kind::Vessel, aliases());
}

#[test]
fn what_is_nested_without_end_is_refused() {
    hold("depth", Kind::Vessel, depth());
}

#[test]
fn what_is_long_without_end_is_refused() {
    hold("length", Kind::Vessel, length());
}

#[test]
fn what_are_too_many_is_refused_by_their_cap_and_what_are_not_is_judged() {
    hold("number", Kind::Vessel, number());
}

/// Sparse files, so that nothing is written and all of it could be read.
#[test]
fn files_of_200_mb_are_refused_unread_whatever_begins_them() {
    let folder = tempfile::tempdir().unwrap();
    let here = folder.path();
    std::fs::write(here.join("good.yaml"), GOOD).unwrap();
    let begins = [GOOD, "# ", "name: \"", "name: ", "? ", "", "{\"schema\":\"kitmuster/audit/1\"}"];
    let commands: [&[&str]; 7] = [
        &["check", "huge.yaml", "--on", DAY],
        &["check", "good.yaml", "--on", DAY, "--profile", "huge.yaml"],
        &["check", "good.yaml", "--on", DAY, "--inspection", "huge.yaml"],
        &["quote", "good.yaml", "--ordered", DAY, "--catalogue", "huge.yaml"],
        &["audit", "good.yaml", "--date", DAY, "--draft", "huge.yaml"],
        &["sheet", "--blank-vessel", "huge.yaml"],
        &["audit", "huge.yaml", "--date", DAY],
    ];
    for (begin, typed) in begins.iter().zip(commands) {
        let path = here.join("huge.yaml");
        std::fs::write(&path, begin).unwrap();
        std::fs::File::options().write(true).open(&path).unwrap().set_len(200_000_000).unwrap();
        let held = held(here, typed);
        assert_eq!(held.ran.status, 2, "{typed:?}: {}", held.said());
        assert!(held.said().contains("huge.yaml: this file is too large"), "{}", held.said());
        assert!(held.peak < 60_000, "{typed:?}: {} KiB", held.peak);
        refuse_live("200 MB", &held.ran).unwrap();
    }
}
