#!/bin/bash
# How soon small runs are done: --help, and the whole demo city, each in a fresh JVM, one after the other.
#
#   src/bench/small-runs.sh [ROUNDS]      (default: 7 rounds)
#
# Prints median and best of wall time, and the processor time, for
#   java -jar target/spanroom.jar --help
#   java -jar target/spanroom.jar rank --config config/spanroom.yaml                           zones in EPSG:2226
#   java -jar target/spanroom.jar rank --config config/spanroom.yaml --output-crs EPSG:3857    layers in a projected system too
#   the demo with Java's first compiler alone (-XX:TieredStopAtLevel=1), which is all that a small city is worth
# and for the first two of the demo once more with an archive of classes (-XX:SharedArchiveFile), which is made on the way. CPUS=0,1
# pins them to these processors where taskset is there. Needs target/spanroom.jar (mvn package) and python3. JAVA_OPTS is handed to java.
set -euo pipefail

rounds=${1:-7}
here=$(cd "$(dirname "$0")/../.." && pwd)
jar=$here/target/spanroom.jar
[ -f "$jar" ] || { echo "$jar is missing: run 'mvn -DskipTests package' first" >&2; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$here"
read -r -a java_opts <<<"${JAVA_OPTS:-}"
pin=()
if [ -n "${CPUS:-}" ] && command -v taskset >/dev/null; then
    pin=(taskset -c "$CPUS")
fi

# measure NAME COMMAND...
measure() {
    local name=$1
    shift
    python3 - "$name" "$rounds" "$work/run" "${pin[@]}" "$@" <<'PY'
import resource, shutil, statistics, subprocess, sys, time

name, rounds, out, command = sys.argv[1], int(sys.argv[2]), sys.argv[3], sys.argv[4:]
wall, cpu = [], []
for _ in range(rounds):
    shutil.rmtree(out, ignore_errors=True)
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    begin = time.monotonic()
    done = subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
    wall.append(time.monotonic() - begin)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    if done.returncode:
        sys.exit(f"{name} failed: {done.stderr.decode()}")
print(f"{name:34} median {statistics.median(wall):5.2f} s   best {min(wall):5.2f} s   processor {statistics.median(cpu):5.2f} s")
PY
}

demo=(rank --config config/spanroom.yaml --output "$work/run")
echo "$(nproc) processors, load $(cut -d' ' -f1 /proc/loadavg), $(java -version 2>&1 | head -1)"
measure "--help" java "${java_opts[@]}" -jar "$jar" --help
measure "demo city" java "${java_opts[@]}" -jar "$jar" "${demo[@]}"
measure "demo city, first compiler" java "${java_opts[@]}" -XX:TieredStopAtLevel=1 -jar "$jar" "${demo[@]}"
measure "demo city, projected" java "${java_opts[@]}" -jar "$jar" "${demo[@]}" --output-crs EPSG:3857
rm -rf "$work/run"
java "${java_opts[@]}" -XX:ArchiveClassesAtExit="$work/classes.jsa" -jar "$jar" "${demo[@]}" --output-crs EPSG:3857 \
    >"$work/out" 2>&1 || { cat "$work/out" >&2; exit 1; }
measure "demo city, archive" java "${java_opts[@]}" -XX:SharedArchiveFile="$work/classes.jsa" -jar "$jar" "${demo[@]}"
measure "demo city, projected, archive" java "${java_opts[@]}" -XX:SharedArchiveFile="$work/classes.jsa" -jar "$jar" \
    "${demo[@]}" --output-crs EPSG:3857
