//! The shipped profiles are embedded: build again when a file is added.
fn main() {
    println!("cargo:rerun-if-changed=requirements");
}
