#!/usr/bin/env bash
# Tries to break the readers of kitmuster with inputs that grow towards code
# not yet reached.
#   fuzz/run.sh smoke                    a bounded look, for every change
#   fuzz/run.sh long MINUTES [TARGET…]   each target so long, two at a time
#   fuzz/run.sh again TARGET FILE        one input once more, with its story
# Corpora, seeds and what was found lie in the target folder, under `fuzz/`.
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
home="$(cd "$here/.." && pwd)"
target="${CARGO_TARGET_DIR:-$home/target}"
place="$target/fuzz"
host="$(rustc -vV | sed -n 's/^host: //p')"
all=(vessel inspection catalogue profile vocabulary techniques record length figures swollen)
found="$place/found"
mkdir -p "$place"

# The readers are instrumented by the compiler's own pass, which the stable
# toolchain has; naming the host keeps build scripts and macros without it.
build() {
  if ! command -v g++ >/dev/null && ! command -v c++ >/dev/null; then
    apt-get update -qq
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq g++ >/dev/null
  fi
  local profile="$1" flags=(--cfg fuzzing -Cpasses=sancov-module -Ccodegen-units="$2") one
  for one in "${@:3}" inline-8bit-counters pc-table; do
    flags+=("-Cllvm-args=-sanitizer-coverage-$one")
  done
  RUSTFLAGS="${flags[*]}" cargo build --locked --quiet --manifest-path "$here/Cargo.toml" \
    --target-dir "$target" --target "$host" --profile "$profile"
  # A copy, so that a later build does not disturb a long run.
  program="$place/readers-$profile"
  cp --remove-destination "$target/$host/$profile/readers" "$program"
  seeds="$place/seeds"
  rm -rf "$seeds" && mkdir -p "$seeds"
  KITMUSTER_SEEDS="$seeds" "$program" >/dev/null 2>&1
  cat "$here/words.dict" "$seeds/keys.dict" > "$place/words.dict"
  local name
  for name in "${all[@]}"; do mkdir -p "$seeds/$name" "$here/seeds/$name"; done
}

# The longest input of a target, in bytes.
longest() {
  case "$1" in
    length | figures) echo 64 ;;
    swollen) echo 400 ;;
    inspection) echo 2500 ;;
    record) echo 24000 ;;
    *) echo 8000 ;;
  esac
}

# One target: NAME CORPUS ARGUMENTS…
try() {
  local name="$1" corpus="$2"
  shift 2
  mkdir -p "$found/$name" "$corpus"
  # One thread, or a run could not be repeated. The targets themselves hold a
  # text to two seconds of processor time; the minute by the clock is for what
  # never ends, on a machine that may have much else to do.
  KITMUSTER_TARGET="$name" RAYON_NUM_THREADS=1 "$program" -timeout=60 -report_slow_units=60 \
    -dict="$place/words.dict" -artifact_prefix="$found/$name/" -max_len="$(longest "$name")" \
    -rss_limit_mb=1024 -print_final_stats=1 "$@" "$corpus" "$seeds/$name" "$here/seeds/$name"
}

# What a run said of itself: the number after a name, first or last.
said() { grep -aoE "$1" "$3" | "$2" -n1 | grep -oE '[0-9]+$' || echo 0; }

row() {
  local name="$1" log="$2" corpus="$3"
  local of=(-name 'crash-*' -o -name 'timeout-*' -o -name 'oom-*')
  printf '%-11s %10s %8s %8s %8s %8s %8s\n' "$name" \
    "$(grep -aoE 'number_of_executed_units: [0-9]+' "$log" | awk '{ sum += $2 } END { print sum + 0 }')" \
    "$(said 'average_exec_per_sec: +[0-9]+' tail "$log")" \
    "$(said 'INITED cov: [0-9]+' head "$log")" \
    "$(grep -aoE ' cov: [0-9]+' "$log" | grep -oE '[0-9]+' | sort -n | tail -n1)" \
    "$(find "$corpus" -type f | wc -l)" "$(find "$found/$name" -type f \( "${of[@]}" \) | wc -l)"
}

heading() {
  printf '%-11s %10s %8s %8s %8s %8s %8s\n' target runs runs/s cov cov corpus found
}

tell() {
  echo "fuzz: $1 failed; the input is in $found/$1/:" >&2
  grep -a -A2 'panicked at' "$2" >&2 || tail -n 25 "$2" >&2
  echo "once more: fuzz/run.sh again $1 FILE" >&2
}

smoke() {
  # Without the compares, which cost time to build and pay in a long run only.
  build smoke 16 level=3
  found="$place/found-smoke"
  local failed=0 name log corpus
  rm -rf "$found" "$place/smoke"
  mkdir -p "$place/smoke"
  heading
  for name in "${all[@]}"; do
    log="$place/smoke/$name.log" corpus="$place/smoke/$name"
    if ! try "$name" "$corpus" -seed=1 -runs=20000 -max_total_time=4 >"$log" 2>&1; then
      tell "$name" "$log"
      failed=1
    fi
    row "$name" "$log" "$corpus"
  done
  return "$failed"
}

# One target for so many minutes. What is found does not end it: it goes on
# behind the finding, with another chance.
long_one() {
  local name="$1" ends="$2" log="$place/long/$1.log" corpus="$place/corpus/$1" left
  : >"$log"
  while left=$((ends - $(date +%s))) && [ "$left" -gt 5 ]; do
    try "$name" "$corpus" -max_total_time="$left" >>"$log" 2>&1 && break
    echo "found by $name, $(date +%T)" | tee -a "$place/long/found.txt" >&2
  done
}

long() {
  local minutes="$1" name
  shift
  [ "$#" -gt 0 ] || set -- "${all[@]}"
  build release 1 level=4 trace-compares
  renice -n 10 $$ >/dev/null || true
  mkdir -p "$place/long"
  local running=0
  for name in "$@"; do
    if [ "$running" -ge 2 ]; then
      wait -n || true
      running=$((running - 1))
    fi
    long_one "$name" "$(($(date +%s) + minutes * 60))" &
    running=$((running + 1))
  done
  wait
  heading
  for name in "$@"; do row "$name" "$place/long/$name.log" "$place/corpus/$name"; done
}

case "${1:-}" in
  smoke) smoke ;;
  long) shift && long "$@" ;;
  again)
    # The program that was built last.
    program="$(ls -t "$place"/readers-* | head -n1)"
    KITMUSTER_TARGET="$2" RAYON_NUM_THREADS=1 RUST_BACKTRACE=1 "$program" "$3"
    ;;
  *)
    sed -n '2,7p' "$0" | cut -c3-
    exit 2
    ;;
esac
