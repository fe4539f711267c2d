#!/bin/bash
# Time and memory of a whole run beside what a general tool needs to copy the same data.
#
#   src/bench/rank-vs-ogr2ogr.sh [ROUTES] [ROUNDS]      (default: 100000 routes, 3 rounds)
#
# Writes an invented city of about so many routes, then by turns runs
#   java -jar target/spanroom.jar rank      reads routes, vaults and contents, cuts, assesses, ranks, writes the results
#   ogr2ogr, three copies one after another: the routes file to GeoPackage; the spans layer that rank wrote, GeoPackage to
#                                           GeoPackage; the same layer to CSV
# and prints the medians of wall time, the largest memory, and the ratio of the times. At the end rank runs once more on one
# thread, and the gain of two threads is printed stage by stage. A run counts only if its run.json says that it found the spans and
# the length of the first one; figures of a run that lost data would be worth nothing.
#
# Settings, as environment variables:
#   INPUT    geojson (default), shapefile or geopackage: the format that routes and vaults are read from
#   FORMATS  of the results, joined by commas; default geopackage,csv; "all" for every format
#   OPTIONS  further options of rank; default --no-uncertainty, since the copies simulate nothing either
#   JAVA_OPTS is handed to java; default -XX:+UseParallelGC, whose collector stops the program but takes least processor time
#   KEEP=1 keeps the work folder, WORK names it; SINGLE=0 leaves the run on one core out, COPIES=0 the copies
#
# Needs: target/spanroom.jar (mvn package), gdal-bin, python3, and GNU time at /usr/bin/time.
set -euo pipefail

routes=${1:-100000}
rounds=${2:-3}
# An average route of the invented city passes this many spans, in hundredths.
spans=$((routes * 265 / 100))
input=${INPUT:-geojson}
formats=${FORMATS:-geopackage,csv}
read -r -a options <<<"${OPTIONS---no-uncertainty}"
[ "$formats" = all ] && formats=geopackage,csv,geojson,shapefile
here=$(cd "$(dirname "$0")/../.." && pwd)
jar=$here/target/spanroom.jar
config=sample-gis/spanroom.yaml
work=${WORK:-$(mktemp -d)}
city=$work/city
read -r -a java_opts <<<"${JAVA_OPTS--XX:+UseParallelGC}"
pin=()

fail() {
    echo "$1" >&2
    exit 1
}
[ -f "$jar" ] || fail "$jar is missing: run 'mvn -DskipTests package' first"
needed=(java python3 /usr/bin/time)
[ "${COPIES:-1}" = 0 ] && [ "$input" = geojson ] || needed+=(ogr2ogr)
for tool in "${needed[@]}"; do
    command -v "$tool" >/dev/null || fail "$tool is not installed"
done
# The config names files relative to the folder that the program is started in.
cd "$here"
mkdir -p "$work"
[ "${KEEP:-0}" = 1 ] || [ -n "${WORK:-}" ] || trap 'rm -rf "$work"' EXIT

# timed LOG COMMAND...: appends "wall-seconds cpu-seconds kilobytes" to LOG; the command's output stays in out and err.
timed() {
    local log=$1
    shift
    /usr/bin/time -f '%e %U %S %M' -o "$work/time" "$@" >"$work/out" 2>"$work/err" ||
        { cat "$work/out" "$work/err" >&2; fail "failed: $*"; }
    awk '{ print $1, $2 + $3, $4 }' "$work/time" >>"$log"
}

# Prints the counts and lengths of a run, after checking that they are what the city was laid out with.
gate() {
    python3 - "$1/run.json" "$spans" <<'PY'
import json, sys

run = json.load(open(sys.argv[1]))
wanted = int(sys.argv[2])
spans, lengths = run["spans"], run["lengths_m"]
# Faults that the city has on purpose take some spans away and make some more of others.
if not 0.95 * wanted <= spans <= 1.05 * wanted:
    sys.exit(f"run.json says {spans} spans, the city was laid out with {wanted}")
# Blocks are 60 to 200 m, links between districts up to 300 m.
if not 80 * wanted <= lengths["spans"] <= 180 * wanted:
    sys.exit(f"run.json says {lengths['spans']} m of spans, which is not near 120 m for each of {wanted}")
# Written to the millimeter each, so three roundings may differ by two.
if abs(lengths["routes"] - lengths["spans"] - lengths["remainders"]) > 0.002:
    sys.exit(f"lengths do not add up: {lengths}")
print(f"{spans} spans of {lengths['spans']} m, remainders {lengths['remainders']} m")
PY
}

if [ -n "${WORK:-}" ] && [ -f "$city/ducts.geojson" ]; then
    echo "taking the city that is in $city"
else
    echo "writing a city of about $routes routes ($spans spans) to $city"
    rm -rf "$city"
    java "${java_opts[@]}" -jar "$jar" sample --spans "$spans" --seed 1 --output "$city" >"$work/out" 2>&1 ||
        { cat "$work/out" >&2; fail "sample failed"; }
fi
case $input in
    geojson) ending=geojson driver=GeoJSON ;;
    shapefile) ending=shp driver="ESRI Shapefile" ;;
    geopackage) ending=gpkg driver=GPKG ;;
    *) fail "INPUT must be geojson, shapefile or geopackage, is $input" ;;
esac
for layer in ducts vaults; do
    [ -f "$city/$layer.$ending" ] || ogr2ogr -f "$driver" "$city/$layer.$ending" "$city/$layer.geojson" -nln "$layer" \
        2>"$work/err" || { cat "$work/err" >&2; fail "cannot convert the city to $driver"; }
done
routes_file=$city/ducts.$ending
echo "$(wc -l <"$city/ducts.geojson") lines of GeoJSON; $routes_file: $(($(wc -c <"$routes_file") / 1000000)) MB"
echo "$(nproc) cores, $(awk '/MemTotal/ { printf "%.0f GiB", $2 / 1048576 }' /proc/meminfo); $(ogr2ogr --version 2>/dev/null || echo "no ogr2ogr");" \
    "$(java -version 2>&1 | sed -n 2p)"
echo "results in $formats; options: ${options[*]}; java ${java_opts[*]}"

# ranked LOG ARGUMENT...: one run into $work/run.
ranked() {
    local log=$1
    shift
    rm -rf "$work/run"
    timed "$log" "${pin[@]}" java "${java_opts[@]}" -jar "$jar" rank --config "$config" --routes "$routes_file" \
        --vaults "$city/vaults.$ending" --contents "$city/contents.csv" --output "$work/run" --formats "$formats" "${options[@]}" "$@"
}

rm -f "$work"/*.log
first=""
for round in $(seq "$rounds"); do
    ranked "$work/rank.log"
    grep -E ' s  ' "$work/err" >"$work/stages" || true
    seen=$(gate "$work/run") || fail "round $round: the results cannot be trusted"
    [ -z "$first" ] && first=$seen && echo "gate: $seen"
    [ "$seen" = "$first" ] || fail "round $round found $seen, the first round $first"
    rm -f "$work"/copy.*
    if [ "${COPIES:-1}" = 1 ]; then
        timed "$work/routes.log" ogr2ogr -f GPKG "$work/copy.gpkg" "$routes_file"
    fi
    if [ "${COPIES:-1}" = 1 ] && [ -f "$work/run/spanroom.gpkg" ]; then
        rm -f "$work"/copy.*
        timed "$work/spans.log" ogr2ogr -f GPKG "$work/copy.gpkg" "$work/run/spanroom.gpkg" spans
        timed "$work/csv.log" ogr2ogr -f CSV "$work/copy.csv" "$work/run/spanroom.gpkg" spans
    fi
    rm -f "$work"/copy.*
    echo "round $round: $({ tail -qn 1 "$work"/{rank,routes,spans,csv}.log 2>/dev/null || true; } | tr '\n' ';') (wall s, CPU s, kB)"
done
cat "$work/stages"

python3 - "$work" <<'PY'
import os, statistics, sys

def row(name, title):
    path = os.path.join(sys.argv[1], name + ".log")
    if not os.path.exists(path):
        return 0
    rows = [[float(x) for x in line.split()] for line in open(path)]
    wall, cpu = (statistics.median(r[i] for r in rows) for i in (0, 1))
    print(f"{title:32s} {wall:8.2f} s wall {cpu:8.2f} s CPU {max(r[2] for r in rows) / 1024:7.0f} MiB")
    return wall

rank = row("rank", "rank")
copies = row("routes", "ogr2ogr, routes to GeoPackage")
copies += row("spans", "ogr2ogr, spans to GeoPackage")
copies += row("csv", "ogr2ogr, spans to CSV")
if copies:
    print(f"rank takes {rank / copies:.2f} times as long as the copies together ({copies:.2f} s)")
PY

if [ "${SINGLE:-1}" = 1 ]; then
    command -v taskset >/dev/null && pin=(taskset -c 0)
    ranked "$work/single.log" --threads 1
    pin=()
    [ "$(gate "$work/run")" = "$first" ] || fail "one core finds something else"
    grep -E ' s  ' "$work/err" >"$work/single"
    python3 - "$work/stages" "$work/single" <<'PY'
import re, sys

def stages(name):
    return {m[1]: float(m[2]) for m in (re.match(r"(.*?) +([0-9.]+) s  ", line) for line in open(name)) if m}

many, one = stages(sys.argv[1]), stages(sys.argv[2])
for stage in one:
    print(f"{stage:16s} {one[stage]:7.1f} s on one core, {many[stage]:7.1f} s on all: {one[stage] / max(many[stage], 0.05):.2f} times")
PY
fi
