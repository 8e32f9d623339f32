//! A vessel's inventory in, the check's JSON and HTML out, through memory:
//! whoever calls takes `room` for the text, writes it there, and asks `check`.

use kitmuster::engine::{self, Depth, Request};
use kitmuster::fleet;
use kitmuster::freeing::{self, Prepared, Terms};
use kitmuster::load::{self, Library};
use kitmuster::measure::Day;
use kitmuster::model::vessel::Trust;
use kitmuster::report::{self, Locale, Subject, options::Shown};

/// Memory for a text of so many bytes. It is not given back.
#[unsafe(no_mangle)]
pub extern "C" fn room(bytes: usize) -> *mut u8 {
    Box::leak(vec![0; bytes].into_boxed_slice()).as_mut_ptr()
}

/// The check of the request at `text`: its first line is the name of the file
/// and the days of departure and return, the rest is the file. The answer is
/// the JSON, a zero byte and the HTML, or one line of what is wrong; its place
/// is in the upper half of what is returned, its length in the lower.
///
/// # Safety
/// `text` is a `room` for as many bytes, and they are written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn check(text: *const u8, bytes: usize) -> u64 {
    // SAFETY: it is what is asked of the caller.
    let request = unsafe { std::slice::from_raw_parts(text, bytes) };
    let answer = answer(&String::from_utf8_lossy(request)).unwrap_or_else(|wrong| wrong);
    let answer: &'static mut str = answer.leak();
    ((answer.as_ptr() as u64) << 32) | answer.len() as u64
}

fn answer(request: &str) -> Result<String, String> {
    let (first, text) = request.split_once('\n').ok_or("the request has no first line")?;
    let words: Vec<&str> = first.split(' ').collect();
    let [name, departure, back] = words[..] else {
        return Err(format!("`{first}` is not a name and two days"));
    };
    let day = |text| Day::parse(text).map_err(|error| error.to_string());
    let library = Library::shipped().map_err(|refusal| format!("{refusal:?}"))?;
    let vocabulary = &library.vocabulary;
    let (vessel, source) =
        load::read_vessel(name, text, vocabulary).map_err(|refusal| format!("{refusal:?}"))?;
    let mut check = engine::check(&Request {
        vocabulary,
        profiles: &library.profiles,
        asked: &[],
        vessel: &vessel,
        inspections: &[],
        departure: day(departure)?,
        back: Some(day(back)?),
        trust: Trust::All,
        depth: Depth::Whole,
    });
    check.notices.extend(fleet::notices(&check, check.asked.departure));
    let sources = &[source];
    let locale = Locale::default();
    let practice = library.practice.as_ref().ok_or("the library has no techniques")?;
    let terms = Terms { vocabulary, prepared: &Prepared::new(practice), catalogues: &[] };
    let options = &freeing::of_check(&terms, &check);
    let freeing = Some(Shown {
        options,
        practice,
        vocabulary,
        catalogues: &[],
        sources,
        notices: &check.notices,
        locale,
    });
    let subject = Subject { check: &check, vocabulary, sources, locale, freeing };
    let json = report::wire::check(&subject).map_err(|error| error.to_string())?;
    Ok(format!("{json}\0{}", report::check_html(&subject)))
}
