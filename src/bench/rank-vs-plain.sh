#!/bin/bash
# Time and memory of a whole run beside a plain program that only cuts the same routes at the same vaults and exports the spans.
#
#   src/bench/rank-vs-plain.sh [ROUTES] [ROUNDS]      (default: 100000 routes, 1 round)
#
# Writes an invented plant of so many short routes (five vertices, ten attributes each; src/bench/java/org/spanroom/plain), then by turns runs
#   PlainCut      Jackson, GeoTools and JTS on all cores: reads, projects, cuts, writes GeoJSON; no engineering
#   spanroom      rank without simulation, GeoJSON in, GeoPackage and CSV out, by java @config/large.args
#   spanroom      the same with simulation and field checks
# and prints wall time, processor time and memory of each, and the ratios of the medians. A round counts only if the plain program and
# rank agree on the number of spans and, to four ten-thousandths, on their length: the plain program measures in UTM, whose scale is 0.9996 at
# the central meridian (Snyder, Map Projections: A Working Manual, USGS 1987, from memory).
#
# Settings, as environment variables:
#   JAVA_OPTS    handed to rank after @config/large.args; default -Xmx1800m
#   SIMULATION=0 leaves the third run out
#   CORES        runs once more without simulation on so many cores, with as many threads, such as "1 2 4 8", and prints the serial share
#   WORK         keeps city and results in this folder
#
# Needs: target/spanroom.jar and target/test-classes (mvn -DskipTests package), python3, GNU time at /usr/bin/time.
set -euo pipefail

routes=${1:-100000}
rounds=${2:-1}
here=$(cd "$(dirname "$0")/../.." && pwd)
jar=$here/target/spanroom.jar
classes=$here/target/bench-classes
read -r -a java_opts <<<"${JAVA_OPTS--Xmx1800m}"
work=${WORK:-$(mktemp -d)}
[ -n "${WORK:-}" ] || trap 'rm -rf "$work"' EXIT

fail() {
    echo "$1" >&2
    exit 1
}
[ -f "$jar" ] || fail "$jar is missing: run 'mvn -DskipTests package' first"
[ -x /usr/bin/time ] || fail "/usr/bin/time is not installed"
mkdir -p "$work" "$classes"
pinned=()
javac -d "$classes" -cp "$jar" --release 17 "$here"/src/bench/java/org/spanroom/plain/[A-Z]*.java

# timed LOG COMMAND...: appends "wall-seconds cpu-seconds kilobytes" to LOG; the command's output stays in out and err.
timed() {
    local log=$1
    shift
    /usr/bin/time -f '%e %U %S %M' -o "$work/time" "$@" >"$work/out" 2>"$work/err" || {
        cat "$work/out" "$work/err" >&2
        fail "failed: $*"
    }
    awk '{ print $1, $2 + $3, $4 }' "$work/time" >>"$log"
}

ranked() {
    local log=$1
    shift
    rm -rf "$work/run"
    (cd "$here" && timed "$log" "${pinned[@]}" java @config/large.args "${java_opts[@]}" -jar "$jar" rank --config "$work/city/spanroom.yaml" \
        --output "$work/run" --formats geopackage,csv "$@")
    grep -E '[0-9] s  ' "$work/err" | grep -v 'left$' >"$log.stages" || true
    python3 - "$work/run/run.json" "$work/plain.out" <<'PY' || fail "rank and the plain program do not agree"
import json, re, sys

run = json.load(open(sys.argv[1]))
spans, km = re.search(r"(\d+) spans of ([\d.]+) km", open(sys.argv[2]).read()).groups()
found_km = run["lengths_m"]["spans"] / 1000
if run["spans"] != int(spans) or abs(found_km / float(km) - 1) > 4.1e-4:
    sys.exit(f"plain: {spans} spans of {km} km; rank: {run['spans']} spans of {found_km} km")
PY
}

[ -f "$work/city/ducts.geojson" ] || java -cp "$classes" org.spanroom.plain.ShortRoutes "$work/city" "$routes"
echo "$(nproc) cores, $(awk '/MemTotal/ { printf "%.0f GiB", $2 / 1048576 }' /proc/meminfo); $(java -version 2>&1 | sed -n 2p); rank with ${java_opts[*]}"
rm -f "$work"/*.log
for round in $(seq "$rounds"); do
    timed "$work/plain.log" java -XX:+UseParallelGC -cp "$classes:$jar" org.spanroom.plain.PlainCut \
        "$work/city/ducts.geojson" "$work/city/vaults.geojson" "$work/plain.geojson"
    cp "$work/out" "$work/plain.out"
    rm -f "$work/plain.geojson"
    ranked "$work/rank.log" --no-uncertainty
    [ "${SIMULATION:-1}" = 0 ] || ranked "$work/simulated.log"
    echo "round $round: $(tail -qn 1 "$work"/{plain,rank,simulated}.log 2>/dev/null | tr '\n' ';') (wall s, CPU s, kB)"
done
cat "$work/plain.out" "$work/rank.log.stages"
for cores in ${CORES:-}; do
    [ "$cores" -le "$(nproc)" ] || fail "CORES names $cores, and this machine has $(nproc)"
    pinned=(taskset -c "0-$((cores - 1))")
    ranked "$work/cores-$cores.log" --no-uncertainty --threads "$cores"
    cat "$work/cores-$cores.log.stages"
done

python3 - "$work" <<'PY'
import os, statistics, sys

def row(name, title):
    path = os.path.join(sys.argv[1], name + ".log")
    if not os.path.exists(path):
        return None
    rows = [[float(x) for x in line.split()] for line in open(path)]
    wall, cpu = (statistics.median(r[i] for r in rows) for i in (0, 1))
    print(f"{title:28s} {wall:8.2f} s wall {cpu:8.2f} s CPU {max(r[2] for r in rows) / 1024:7.0f} MiB")
    return wall

plain = row("plain", "plain program")
rank = row("rank", "rank, no simulation")
simulated = row("simulated", "rank with simulation")
print(f"rank takes {rank / plain:.2f} times as long as the plain program")
walls = [(int(n), row(f"cores-{n}", f"rank on {n} cores")) for n in os.environ.get("CORES", "").split()]
for cores, wall in walls[1:]:
    first, alone = walls[0]
    # Amdahl 1967, from memory: time on n cores = serial + (1 - serial) / n, relative to one
    share = (wall / alone - first / cores) / (1 - first / cores)
    print(f"{cores} cores: {alone / wall:.2f} times as fast as {first}; serial share of {100 * share:.0f} %")
if simulated:
    print(f"simulation and field checks add {100 * (simulated / rank - 1):.0f} %")
PY
