//! The sample catalogues: that they load, that they sell every kind that a
//! shipped profile asks for, that what they sell satisfies the rules, and
//! that each shows what it is there to show.

use kitmuster::engine::{self, Depth, Terms};
use kitmuster::load::{self, Library};
use kitmuster::measure::{Day, Money};
use kitmuster::model::catalogue::{Catalogue, Fits, Given, Gives, Item};
use kitmuster::model::finding::{Outcome, Verdict};
use kitmuster::model::profile::Profile;
use kitmuster::model::vessel::{Statement, Tool, Trust, Vessel};
use kitmuster::model::vocabulary::Class;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The day on which everything is ordered.
const ORDERED: &str = "2026-11-26";

fn day(text: &str) -> Day {
    Day::parse(text).unwrap()
}

fn yaml_files(folder: &str) -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<PathBuf> =
        files.filter(|path| path.extension().is_some_and(|end| end == "yaml")).collect();
    files.sort();
    files
}

fn catalogues(library: &Library) -> Vec<Catalogue> {
    let read = |path: PathBuf| {
        let read = load::load_catalogue(&path, &library.vocabulary);
        read.unwrap_or_else(|refusal| panic!("{refusal}")).0
    };
    yaml_files("suppliers").into_iter().map(read).collect()
}

fn given(item: &Item) -> &[Given] {
    if let Gives::Tools(given) = &item.gives { given } else { &[] }
}

/// A tool as it lies on deck after it was delivered on that day.
fn delivered(given: &Given, catalogue: &Catalogue, on: Day) -> Tool {
    let mut tool = given.tool.clone();
    let by = Some(catalogue.supplier.clone());
    let statement = |to: &String| Statement { to: to.clone(), on, by: by.clone() };
    tool.conforms = given.conforms.iter().map(statement).collect();
    tool.inspected = given.inspected.then_some(on);
    tool.expires = given.lasts.map(|lasts| on.through(lasts));
    let others = catalogue.items.iter().flat_map(given_with);
    let fit = |one: &(&Item, &Given)| {
        given.fits.iter().any(|fits| match fits {
            Fits::Item(number) => *number == one.0.number,
            Fits::Kind(kind) => *kind == one.1.tool.kind,
        })
    };
    tool.fits = others.filter(fit).map(|(_, other)| other.tool.mark.clone()).collect();
    tool
}

fn given_with(item: &Item) -> impl Iterator<Item = (&Item, &Given)> {
    given(item).iter().map(move |one| (item, one))
}

/// One piece of everything that the catalogue delivers by that day.
fn everything(catalogue: &Catalogue, by: Day) -> Vec<Tool> {
    let ordered = day(ORDERED);
    let in_time = |item: &&Item| {
        (0..item.lead).fold(ordered, |day, _| day.next()) <= by
            && item.stock.is_none_or(|packs| packs >= item.least)
            && item.holds_on(ordered)
    };
    let items = catalogue.items.iter().filter(in_time);
    items.flat_map(given).map(|given| delivered(given, catalogue, ordered)).collect()
}

fn terms<'a>(
    library: &'a Library,
    asked: &'a [Arc<Profile>],
    from: Day,
    to: Option<Day>,
) -> Terms<'a> {
    Terms {
        vocabulary: &library.vocabulary,
        profiles: &library.profiles,
        asked,
        departure: from,
        back: to,
        trust: Trust::All,
        depth: Depth::Findings,
    }
}

/// A vessel without a kit, on which every requirement of tools binds.
fn bare_vessel(library: &Library, freeboard: &str) -> Vessel {
    let text = format!(
        "format: vessel/1\nname: Test Kittiwake\nfreeboard: {freeboard}\npermits: []\ngear: \
         [pelagic-longline]\nareas: [gulf-of-mexico]\nfeatures: {{ wheelhouse: yes }}\nkit: []\n\
         hooks: [{{ name: hooks, type: circle, wire: 5 mm }}]\n"
    );
    load::read_vessel("v.yaml", &text, &library.vocabulary).unwrap().0
}

#[test]
fn the_example_of_the_readme_is_a_catalogue() {
    let library = Library::shipped().unwrap();
    let readme = include_str!("../../suppliers/README.md");
    let text = readme.split("```yaml\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    let read = load::read_catalogue("README.md", text, &library.vocabulary);
    let (catalogue, _) = read.unwrap_or_else(|refusal| panic!("{refusal}"));
    assert_eq!(catalogue.items.len(), 5);
}

#[test]
fn the_catalogues_sell_every_kind_that_a_shipped_profile_asks_for() {
    let library = Library::shipped().unwrap();
    let catalogues = catalogues(&library);
    assert!(catalogues.len() >= 2);
    let sold: BTreeSet<_> =
        catalogues.iter().flat_map(|c| &c.items).flat_map(given).map(|g| g.tool.kind).collect();
    for profile in &library.profiles {
        for kind in profile.requirements.iter().flat_map(|requirement| requirement.kinds()) {
            let kind_of = library.vocabulary.kind(kind);
            if matches!(kind_of.class, Class::Tool | Class::Spare | Class::Document) {
                assert!(sold.contains(&kind), "nobody sells: {} ({})", kind_of.name, profile.id);
            }
        }
    }
}

/// The requirements of a profile for which the goods of one catalogue do not
/// do, delivered the day before, on a rail higher than any in the samples.
fn left_open(library: &Library, profile: &Arc<Profile>, catalogue: &Catalogue) -> BTreeSet<String> {
    let from = profile.in_force.until.unwrap_or(day("2026-12-20"));
    let mut vessel = bare_vessel(library, "6 ft 2 in");
    let all = catalogue.items.iter().flat_map(given);
    vessel.kit = all.map(|given| delivered(given, catalogue, from.previous())).collect();
    let asked = [Arc::clone(profile)];
    let check = engine::check_own(vessel, &[], &terms(library, &asked, from, None));
    let open = check.judgements[0].findings.iter().filter(|one| one.outcome != Outcome::Met);
    let requirements = open.map(|finding| &profile.requirements[finding.requirement]);
    requirements.filter(|one| one.wants_tools()).map(|one| one.id.clone()).collect()
}

#[test]
fn each_requirement_of_a_shipped_profile_is_met_by_what_one_supplier_sells() {
    let library = Library::shipped().unwrap();
    let catalogues = catalogues(&library);
    let mut encoded = library.profiles.iter().filter(|profile| profile.encoded).peekable();
    assert!(encoded.peek().is_some());
    for profile in encoded {
        let open: Vec<_> = catalogues.iter().map(|one| left_open(&library, profile, one)).collect();
        let nobody = open.iter().skip(1).fold(open[0].clone(), |all, one| &all & one);
        assert!(nobody.is_empty(), "{}: {nobody:?}", profile.id);
        // Nothing but an empty catalogue leaves everything open.
        let none = Catalogue { items: Vec::new(), ..catalogues[0].clone() };
        assert!(left_open(&library, profile, &none).len() > 3, "{}", profile.id);
    }
}

/// Bound by rules whose text is not encoded, so that no gear settles it.
const BEYOND_GEAR: [&str; 1] = ["Far Kestrel"];

#[test]
fn together_they_make_every_vessel_ready_that_gear_can_make_ready() {
    let library = Library::shipped().unwrap();
    let catalogues = catalogues(&library);
    let mut helped = Vec::new();
    for path in yaml_files("vessels") {
        let (mut vessel, _) = load::load_vessel(&path, &library.vocabulary).unwrap();
        let departure = vessel.trip.departure.unwrap();
        let ask = terms(&library, &[], departure, vessel.trip.back);
        let before = engine::check_own(vessel.clone(), &[], &ask).verdict;
        for catalogue in &catalogues {
            vessel.kit.extend(everything(catalogue, departure));
        }
        let name = vessel.name.clone();
        let after = engine::check_own(vessel, &[], &ask).verdict;
        if BEYOND_GEAR.contains(&name.as_str()) {
            assert_eq!(after, Verdict::CannotTell, "{name}");
            continue;
        }
        assert_eq!(after, Verdict::Ready, "{name}");
        if before != Verdict::Ready {
            helped.push(name);
        }
    }
    assert!(helped.len() >= 8, "{helped:?}");
}

fn kinds_sold(catalogue: &Catalogue, kind: &str, library: &Library) -> Vec<Item> {
    let kind = library.vocabulary.find_kind(kind).unwrap();
    let only = |item: &&Item| matches!(given(item), [one] if one.tool.kind == kind);
    catalogue.items.iter().filter(only).cloned().collect()
}

#[test]
fn packs_and_times_and_places_are_weighed_against_each_other() {
    let library = Library::shipped().unwrap();
    let catalogues = catalogues(&library);
    let of = |supplier: &str| catalogues.iter().find(|one| one.supplier == supplier).unwrap();
    let (far, near) = (of("Tarnholt Ship Stores"), of("Port Ansel Chandlery"));

    // A pack of four costs less than four singles, and more than two.
    for kind in ["tire", "pliers"] {
        let sold = kinds_sold(far, kind, &library);
        let [single, pack] = sold.as_slice() else { panic!("{kind}") };
        assert_eq!((single.pack, pack.pack), (1, 4));
        assert!(pack.price < single.price.times(4) && pack.price > single.price.times(2));
    }
    // The near one is dearer.
    for kind in ["bolt cutters", "pliers", "tire", "line cutters"] {
        let (far, near) = (kinds_sold(far, kind, &library), kinds_sold(near, kind, &library));
        assert!(!far.is_empty() && !near.is_empty(), "{kind}");
        let soonest = |items: &[Item]| items.iter().map(|item| item.lead).min();
        let cheapest = |items: &[Item]| items.iter().map(|item| item.price).min();
        assert!(soonest(&near) < soonest(&far), "{kind}");
        assert!(cheapest(&near) > cheapest(&far), "{kind}");
    }
    // Delivery of the far one is free above a sum.
    assert!(far.delivery.charge > Money::ZERO && far.delivery.free_from.is_some());
    assert_eq!(near.delivery.charge, Money::ZERO);
    // An extension costs less than the pole that it saves.
    let cutters = kinds_sold(far, "long-line-cutter", &library);
    let extends = |item: &&Item| matches!(item.gives, Gives::Extension { .. });
    let extension = far.items.iter().find(extends).unwrap();
    assert!(cutters.iter().all(|cutter| cutter.price > extension.price));
}

#[test]
fn the_catalogues_show_what_can_stand_in_the_way() {
    let library = Library::shipped().unwrap();
    let items: Vec<Item> = catalogues(&library).into_iter().flat_map(|one| one.items).collect();
    let one = |is: &dyn Fn(&Item) -> bool| items.iter().any(is);
    assert!(one(&|item| item.stock == Some(0)), "out of stock");
    assert!(one(&|item| item.lead > 16), "later than every vessel leaves");
    assert!(one(&|item| item.least > 1), "more than one pack at once");
    assert!(one(&|item| item.holds == Some(day("2026-12-10"))), "a price that ends early");
    assert!(one(&|item| given(item).len() > 2), "a set");
    assert!(one(&|item| given(item).iter().any(|given| given.lasts.is_some())), "an expiry");
    let does = |item: &Item| match item.gives {
        Gives::Service { mends, inspects, .. } => (mends, inspects),
        _ => (false, false),
    };
    assert!(one(&|item| does(item) == (false, true)), "an inspection");
    assert!(one(&|item| does(item) == (true, true)), "a repair");
}
