#!/bin/bash
# How much of the memory that a run holds is alive, stage by stage, and what it is.
#
#   src/bench/memory-alive.sh [ROUTES]      (default: 1000000 routes)
#
# Writes an invented city of about so many routes, ranks it, and at the end of each stage, and every half minute within one, has Java
# collect and count what is left (jcmd GC.class_histogram). Prints the bytes alive and the six kinds of object that take most of them.
# The counting stops the run each time, so its times mean nothing; what is alive does not hang on the collector or on the heap given.
#
# WORK names a work folder that stays (with the city in it); JAVA_OPTS is handed to java, default -XX:+UseParallelGC.
# Needs: target/spanroom.jar (mvn package) and the jcmd of a JDK.
set -euo pipefail

routes=${1:-1000000}
spans=$((routes * 265 / 100))
here=$(cd "$(dirname "$0")/../.." && pwd)
jar=$here/target/spanroom.jar
[ -f "$jar" ] || { echo "$jar is missing: run 'mvn -DskipTests package' first" >&2; exit 1; }
command -v jcmd >/dev/null || { echo "jcmd is not installed; it comes with a JDK" >&2; exit 1; }
work=${WORK:-$(mktemp -d)}
pid=
trap '[ -z "$pid" ] || kill "$pid" 2>/dev/null || true; [ -n "${WORK:-}" ] || rm -rf "$work"' EXIT
read -r -a java_opts <<<"${JAVA_OPTS--XX:+UseParallelGC}"
mkdir -p "$work"
# The config names files relative to the folder that the program is started in.
cd "$here"
[ -f "$work/city/ducts.geojson" ] || java "${java_opts[@]}" -jar "$jar" sample --spans "$spans" --seed 1 --output "$work/city" >/dev/null

rm -rf "$work/run"
java "${java_opts[@]}" -jar "$jar" rank --config sample-gis/spanroom.yaml --routes "$work/city/ducts.geojson" \
    --vaults "$work/city/vaults.geojson" --contents "$work/city/contents.csv" --output "$work/run" --formats csv --no-uncertainty \
    >"$work/out" 2>"$work/err" &
pid=$!

# count WHERE: prints what is alive now.
count() {
    jcmd "$pid" GC.class_histogram >"$work/histogram" 2>/dev/null || return 0
    awk -v where="$1" '
        $1 == "Total" { total = $3 }
        NF >= 4 && $1 ~ /^[0-9]+:$/ && kinds < 6 { kinds++; line[kinds] = sprintf("    %8.1f MB  %11d  %s", $3 / 1e6, $2, $4) }
        END {
            printf "%s: %.2f GB alive\n", where, total / 1e9
            for (i = 1; i <= kinds; i++) print line[i]
        }' "$work/histogram"
}

seen=0
while kill -0 "$pid" 2>/dev/null; do
    lines=$(grep -c ' s  ' "$work/err" || true)
    if [ "$lines" -gt "$seen" ]; then
        seen=$lines
        count "$(grep ' s  ' "$work/err" | tail -n 1)"
    fi
    sleep 0.2
done
wait "$pid" || { cat "$work/err" >&2; exit 1; }
pid=
