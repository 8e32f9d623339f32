/// Whether the change with this number is switched on; where a folder for
/// notes is named, the first time that it is asked for is noted there.
pub fn mutant(number: u32) -> bool {
    use std::io::Write;
    use std::sync::LazyLock;
    use std::sync::atomic::{AtomicBool, Ordering};
    static WANTED: LazyLock<u32> = LazyLock::new(|| {
        std::env::var("MUTANT").ok().and_then(|n| n.parse().ok()).unwrap_or(u32::MAX)
    });
    static NOTES: LazyLock<Option<String>> = LazyLock::new(|| std::env::var("MUTANT_NOTES").ok());
    static SEEN: [AtomicBool; 8192] = [const { AtomicBool::new(false) }; 8192];
    if let Some(folder) = &*NOTES
        && !SEEN[number as usize].swap(true, Ordering::Relaxed)
    {
        let path = format!("{folder}/{}", std::process::id());
        if let Ok(mut file) = std::fs::OpenOptions::new().append(true).create(true).open(path) {
            let _ = file.write_all(format!("{number}\n").as_bytes());
        }
    }
    *WANTED == number
}
