#!/bin/bash
# Time and memory of a whole run beside a general tool's plain copy of the same routes file.
#
#   src/bench/rank-vs-ogr2ogr.sh [ROUTES] [ROUNDS]      (default: 100000 routes, 3 rounds)
#
# Writes an invented city of about so many routes, then by turns runs
#   java -jar target/spanroom.jar rank      reads routes, vaults and contents, cuts, assesses, ranks, writes all results
#   ogr2ogr -f GPKG                         converts the routes file, from GeoJSON to GeoPackage, and nothing else
# and prints the medians of wall time, the largest memory, and the ratio of the times. A run counts only if its run.json
# says that it found the spans and the length of the first one; figures of a run that lost data would be worth nothing.
#
# Needs: target/spanroom.jar (mvn package), gdal-bin, python3; GNU time at /usr/bin/time for memory (without it: wall time
# only). JAVA_OPTS is handed to java. KEEP=1 keeps the work folder, WORK names it.
set -euo pipefail

routes=${1:-100000}
rounds=${2:-3}
# An average route of the invented city passes this many spans, in hundredths.
spans=$((routes * 265 / 100))
here=$(cd "$(dirname "$0")/../.." && pwd)
jar=$here/target/spanroom.jar
config=$here/config/spanroom.yaml
work=${WORK:-$(mktemp -d)}
city=$work/city
read -r -a java_opts <<<"${JAVA_OPTS:-}"

fail() {
    echo "$1" >&2
    exit 1
}
[ -f "$jar" ] || fail "$jar is missing: run 'mvn -DskipTests package' first"
for tool in java ogr2ogr python3; do
    command -v "$tool" >/dev/null || fail "$tool is not installed"
done
mkdir -p "$work"
[ "${KEEP:-0}" = 1 ] || [ -n "${WORK:-}" ] || trap 'rm -rf "$work"' EXIT

# timed LOG COMMAND...: appends "seconds kilobytes" to LOG; kilobytes are 0 where GNU time is absent.
timed() {
    local log=$1
    shift
    if [ -x /usr/bin/time ]; then
        /usr/bin/time -f '%e %M' -o "$work/time" "$@" >"$work/out" 2>&1 || { cat "$work/out" >&2; fail "failed: $*"; }
        cat "$work/time" >>"$log"
    else
        local begin=$EPOCHREALTIME
        "$@" >"$work/out" 2>&1 || { cat "$work/out" >&2; fail "failed: $*"; }
        echo "$(python3 -c "print($EPOCHREALTIME - $begin)") 0" >>"$log"
    fi
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
# Written to the millimetre each, so three roundings may differ by two.
if abs(lengths["routes"] - lengths["spans"] - lengths["remainders"]) > 0.002:
    sys.exit(f"lengths do not add up: {lengths}")
print(f"{spans} spans of {lengths['spans']} m, remainders {lengths['remainders']} m")
PY
}

echo "writing a city of about $routes routes ($spans spans) to $city"
rm -rf "$city"
java "${java_opts[@]}" -jar "$jar" sample --spans "$spans" --seed 1 --output "$city" >"$work/out" 2>&1 ||
    { cat "$work/out" >&2; fail "sample failed"; }
input=$city/ducts.geojson
echo "$(wc -l <"$input") lines, $(($(wc -c <"$input") / 1000000)) MB; $(nproc) cores; $(ogr2ogr --version)"

: >"$work/rank.log"
: >"$work/ogr.log"
first=""
for round in $(seq "$rounds"); do
    rm -rf "$work/run" "$work/copy.gpkg"
    timed "$work/rank.log" java "${java_opts[@]}" -jar "$jar" rank --config "$config" --routes "$input" \
        --vaults "$city/vaults.geojson" --contents "$city/contents.csv" --output "$work/run" --overwrite
    seen=$(gate "$work/run") || fail "round $round: the results cannot be trusted"
    [ -z "$first" ] && first=$seen && echo "gate: $seen"
    [ "$seen" = "$first" ] || fail "round $round found $seen, the first round $first"
    timed "$work/ogr.log" ogr2ogr -f GPKG "$work/copy.gpkg" "$input"
    echo "round $round: rank $(tail -1 "$work/rank.log"), ogr2ogr $(tail -1 "$work/ogr.log") (s, kB)"
done

python3 - "$work/rank.log" "$work/ogr.log" <<'PY'
import statistics, sys

def read(name):
    rows = [line.split() for line in open(name)]
    return statistics.median(float(r[0]) for r in rows), max(int(r[1]) for r in rows) / 1024

(rank_s, rank_mb), (ogr_s, ogr_mb) = read(sys.argv[1]), read(sys.argv[2])
print(f"rank     median {rank_s:8.2f} s   peak {rank_mb:7.0f} MiB")
print(f"ogr2ogr  median {ogr_s:8.2f} s   peak {ogr_mb:7.0f} MiB")
print(f"ratio    {rank_s / ogr_s:.2f} times the time of ogr2ogr")
PY
