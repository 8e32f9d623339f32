#!/usr/bin/env bash
# Opens pages of HTML in a real browser: on a phone and on a desk, in light and
# dark, on A4 and Letter, without network. Without arguments it makes the pages
# with the program, from the sample fleet and from a hostile one; else it tests
# the pages that are named: tests/browser/run.sh PAGE.html …
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
home="$(cd "$here/../.." && pwd)"
target="${CARGO_TARGET_DIR:-$home/target}"
place="$target/browser"
mkdir -p "$place"

browser="$(command -v chromium || command -v chromium-browser || true)"
# Only what is missing: a Node.js from elsewhere and Debian's exclude each other.
missing=()
[ -n "$browser" ] || missing+=(chromium)
command -v node >/dev/null || missing+=(nodejs)
command -v npm >/dev/null || missing+=(npm)
if [ "${#missing[@]}" -gt 0 ]; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq "${missing[@]}" >/dev/null
  browser="${browser:-$(command -v chromium)}"
fi

# The modules stay out of the source tree, and are fetched anew only when
# their list changed.
if ! cmp -s "$here/package-lock.json" "$place/package-lock.json"; then
  cp "$here/package.json" "$here/package-lock.json" "$place/"
  (cd "$place" && npm ci --ignore-scripts --no-audit --no-fund --silent) || {
    rm -f "$place/package-lock.json"
    exit 1
  }
fi

if [ "$#" -eq 0 ]; then
  (cd "$home" && cargo build --locked --quiet)
  program="$target/debug/kitmuster"
  pages="$place/pages"
  rm -rf "$pages" && mkdir -p "$pages"
  # An audit in which something is not ready ends with 1, one with a file that
  # cannot be read with 2: both are expected here, anything else is not.
  make() {
    local wanted="$1" status=0
    shift
    (cd "$home" && "$program" "$@") || status=$?
    if [ "$status" -ne "$wanted" ]; then
      echo "kitmuster $*: status $status, expected $wanted" >&2
      exit 1
    fi
  }
  make 1 audit vessels --date 2026-11-25 --outcomes --format html --output "$pages/fleet.html"
  make 2 audit tests/browser/hostile --date 2026-11-25 --format html --output "$pages/hostile.html"
  make 1 check vessels/marlow-tern.yaml --format html --output "$pages/not-ready.html"
  make 0 check vessels/amber-shearwater.yaml --format html --output "$pages/ready.html"
  near=(--catalogue suppliers/port-ansel-chandlery.yaml --ordered 2026-11-26 --format html)
  both=("${near[@]}" --catalogue suppliers/tarnholt-ship-stores.yaml --explain)
  make 1 quote vessels "${both[@]}" --for "Ansel Longline Cooperative" --output "$pages/quote-fleet.html"
  make 0 quote vessels/marlow-tern.yaml "${both[@]}" --one-supplier --output "$pages/quote.html"
  make 0 quote vessels/brindle-skua.yaml "${near[@]}" --output "$pages/quote-nothing.html"
  make 2 quote tests/browser/hostile "${both[@]}" --catalogue tests/browser/hostile-shop.yaml \
    --for '<b>Mother & "Sons"' --output "$pages/quote-hostile.html"
  # Cards say which ways are open; where some situation has none, they end
  # with 1.
  make 1 options vessels/marlow-tern.yaml --format html --output "$pages/card.html"
  make 0 options tests/browser/card/open.yaml --format html --output "$pages/card-open.html"
  make 1 options tests/browser/card/bare.yaml --format html --output "$pages/card-bare.html"
  make 1 options vessels/salt-pomelo.yaml --format html --output "$pages/card-closed.html"
  make 1 options tests/browser/hostile/markup.yaml --format html --output "$pages/card-markup.html"
  make 1 options tests/browser/hostile/wide.yaml --format html --output "$pages/card-wide.html"
  papers="$place/papers"
  rm -rf "$papers" && mkdir -p "$papers"
  make 0 sheet vessels/marlow-tern.yaml --output "$papers/inspector.html"
  make 0 sheet vessels/winter-petrel.yaml --output "$papers/inspector-long.html"
  make 0 sheet vessels/long-meridian.yaml --for skipper --output "$papers/skipper.html"
  set -- "$pages"/*.html
fi

export KITMUSTER_BROWSER="$browser" KITMUSTER_MODULES="$place"
node "$here/look.mjs" "$@"
# Papers are made for print, where their type is smaller.
if [ -n "${papers:-}" ]; then
  KITMUSTER_SMALLEST=12 node "$here/look.mjs" "$papers"/*.html
fi
