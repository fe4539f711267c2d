#!/bin/bash
# How many bytes a run writes: the demo city, and an invented city of about so many routes.
#
#   src/bench/result-sizes.sh [ROUTES]      (default: 1000000 routes; 0: the demo only)
#
# Both with the shipped formats and columns. Prints each file with its bytes, and per span. The goals: the demo below 4 MB, a million
# routes below 3 GiB.
#
# Environment: JAVA_OPTS is handed to java; OPTIONS are further options of rank, e.g. "--columns all"; WORK names the work folder, which is
# then kept. Needs target/spanroom.jar, java and python3; a million routes need about 12 GB of disk and 6 GB of memory.
set -euo pipefail

routes=${1:-1000000}
# An average route of the invented city passes this many spans, in hundredths.
spans=$((routes * 265 / 100))
here=$(cd "$(dirname "$0")/../.." && pwd)
work=${WORK:-$(mktemp -d)}
mkdir -p "$work"
[ -n "${WORK:-}" ] || trap 'rm -rf "$work"' EXIT
read -r -a java_opts <<<"${JAVA_OPTS--XX:+UseParallelGC}"
read -r -a options <<<"${OPTIONS-}"

report() {
    python3 - "$1" "$2" <<'PY'
import json
import pathlib
import sys

folder = pathlib.Path(sys.argv[1])
spans = json.loads((folder / "run.json").read_text(encoding="utf-8"))["spans"]
files = sorted(((file.stat().st_size, file.name) for file in folder.iterdir()), reverse=True)
total = sum(size for size, _ in files)
print(f"{sys.argv[2]}: {spans:,} spans, {total:,} bytes, {total / spans:,.0f} bytes a span")
for size, name in files:
    print(f"  {size:>15,}  {name}")
PY
}

cd "$here"
java "${java_opts[@]}" -jar target/spanroom.jar rank --config sample-gis/spanroom.yaml --output "$work/demo" --overwrite \
    "${options[@]}" >"$work/demo.log" 2>&1 || { cat "$work/demo.log" >&2; exit 2; }
report "$work/demo" "demo city"
if [ "$routes" -gt 0 ]; then
    city=$work/city
    [ -d "$city" ] || java "${java_opts[@]}" -jar target/spanroom.jar sample --spans "$spans" --seed 1 --output "$city" >/dev/null
    java "${java_opts[@]}" -jar target/spanroom.jar rank --config "$city/spanroom.yaml" --output "$work/run" --overwrite \
        --no-uncertainty "${options[@]}" >"$work/run.log" 2>&1 || { cat "$work/run.log" >&2; exit 2; }
    report "$work/run" "about $routes routes"
fi
