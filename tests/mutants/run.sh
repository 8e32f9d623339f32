#!/usr/bin/env bash
# Changes measure/ and engine/ in one place at a time and tells which changes
# no test notices; or so many places of each folder that is named, chosen by a
# seed. What there is to change is what cargo-mutants lists; all changes are woven
# into one copy of the package, built once, and switched on one at a time. A run
# that was broken off goes on where it was; with `again` what the last runs found
# is forgotten.
#   tests/mutants/run.sh [again]
#   tests/mutants/run.sh sample SEED COUNT FOLDER…     (load fleet quote report)
# Needs cargo-mutants (`cargo install cargo-mutants --locked`).
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
home="$(cd "$here/../.." && pwd)"
target="${CARGO_TARGET_DIR:-$home/target}"
place="$target/mutants"
folders=(measure engine)
if [ "${1:-}" = sample ]; then
  seed="$2" count="$3" place="$place-$2"
  folders=("${@:4}")
fi
mkdir -p "$place"
[ "${1:-}" != again ] || rm -f "$place/results.jsonl"

cd "$home"
files=("${folders[@]/#/--file=src/}")
cargo mutants --list --json "${files[@]/%//**}" > "$place/list.json"
rm -rf "$place/plain" "$place/tree"
mkdir -p "$place/plain"
git ls-files -z | xargs -0 cp --parents -t "$place/plain"
cp -r "$place/plain" "$place/tree"
# What a test starts is told which change is on.
pass='.envs(std::env::vars().filter(|(name, _)| name.starts_with("MUTANT")))'
grep -rl 'env_clear()' "$place/tree/tests/it" | xargs sed -i "s/\.env_clear()/&$pass/"

cargo build --locked --quiet --release --manifest-path "$here/Cargo.toml" --target-dir "$target"
[ "${1:-}" != sample ] || "$target/release/kitmuster-mutants" sample "$place" "$seed" "$count"
export CARGO_TARGET_DIR="$target/woven" RUSTFLAGS="--cap-lints allow"
export CARGO_PROFILE_DEV_OPT_LEVEL=1 CARGO_PROFILE_DEV_DEBUG=false
"$target/release/kitmuster-mutants" weave "$place"
cd "$place/tree"
cargo test --locked --no-run --lib --test it --message-format json |
  sed -n 's/.*"profile":{[^}]*"test":true[^}]*}.*"executable":"\([^"]*\)".*/\1/p' > "$place/programs.txt"
xargs -d '\n' "$target/release/kitmuster-mutants" try "$place" < "$place/programs.txt"
