#!/usr/bin/env bash
# Builds engine, loader and report as a module of WebAssembly, refuses it if it
# imports anything (a clock, files, a browser), and holds its answers for the
# sample vessels to those of the command, byte for byte.
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
home="$(cd "$here/../.." && pwd)"
target="${CARGO_TARGET_DIR:-$home/target}"
triple=wasm32-unknown-unknown

if ! command -v node >/dev/null; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq nodejs >/dev/null
fi

cd "$home"
build=(build --locked --quiet --release --manifest-path "$here/Cargo.toml"
  --target "$triple" --target-dir "$target")
if rustup target add "$triple" 2>/dev/null; then
  cargo "${build[@]}"
else
  # Where the target cannot be had from there: Debian's compiler, with the
  # source of the standard library.
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq rustc-web cargo-web rust-web-src lld >/dev/null
  RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 RUSTFLAGS="-C linker=wasm-ld" \
    /usr/bin/cargo "${build[@]}" -Z build-std=std,panic_abort
fi

place="$target/wasm"
rm -rf "$place" && mkdir -p "$place/module" "$place/command"
on=2026-03-09 back=2026-03-20
node "$here/call.mjs" "$target/$triple/release/kitmuster_wasm.wasm" "$place/module" \
  "$on" "$back" vessels/*.yaml

cargo build --locked --quiet
for file in vessels/*.yaml; do
  for format in json html; do
    # 1 is a vessel that is not ready.
    "$target/debug/kitmuster" check "$file" --on "$on" --return "$back" --format "$format" \
      > "$place/command/$(basename "$file" .yaml).$format" || [ $? -eq 1 ]
  done
done
diff -rq "$place/module" "$place/command"
