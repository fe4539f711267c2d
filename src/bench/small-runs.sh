#!/bin/bash
# How soon small runs are done: --help, and the whole demo city, each in a fresh JVM.
#
#   src/bench/small-runs.sh [ROUNDS]      (default: 7 rounds)
#
# Prints median and best of wall time, and the processor time, for
#   java -jar target/spanroom.jar --help
#   java -jar target/spanroom.jar rank --config sample-gis/spanroom.yaml                           zones in EPSG:2226
#   java @config/small.args -jar ... the same                        as the README says: first compiler, serial collector, archive of classes
#   the same without the archive; and without both that and the serial collector
#   java @config/small.args -jar ... --output-crs EPSG:3857          layers in a projected system too
# The commands take turns, so that a machine that changes its pace is the same for all. CPUS=0,1 pins them to these processors where
# taskset is there. Needs target/spanroom.jar and target/spanroom.jsa (mvn package) and python3.
set -euo pipefail

rounds=${1:-7}
here=$(cd "$(dirname "$0")/../.." && pwd)
jar=target/spanroom.jar
cd "$here"
[ -f "$jar" ] && [ -f target/spanroom.jsa ] || { echo "$jar or target/spanroom.jsa is missing: run 'mvn -DskipTests package' first" >&2; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
pin=
if [ -n "${CPUS:-}" ] && command -v taskset >/dev/null; then
    pin="taskset -c $CPUS"
fi
echo "$(nproc) processors, load $(cut -d' ' -f1 /proc/loadavg), $(java -version 2>&1 | head -1)"
python3 - "$rounds" "$work/run" "$jar" "$pin" <<'PY'
import resource, shutil, statistics, subprocess, sys, time

rounds, out, jar, pin = int(sys.argv[1]), sys.argv[2], sys.argv[3], sys.argv[4].split()
demo = ["-jar", jar, "rank", "--config", "sample-gis/spanroom.yaml", "--output", out]
first = "-XX:TieredStopAtLevel=1"
commands = {
    "--help": ["-jar", jar, "--help"],
    "demo city": demo,
    "demo city, small.args": ["@config/small.args", *demo],
    "demo city, small.args, no archive": [first, "-XX:+UseSerialGC", *demo],
    "demo city, first compiler": [first, *demo],
    "demo city, projected, small.args": ["@config/small.args", *demo, "--output-crs", "EPSG:3857"],
}
wall = {name: [] for name in commands}
cpu = {name: [] for name in commands}
for _ in range(rounds):
    for name, arguments in commands.items():
        shutil.rmtree(out, ignore_errors=True)
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        begin = time.monotonic()
        done = subprocess.run([*pin, "java", *arguments], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        wall[name].append(time.monotonic() - begin)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        cpu[name].append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
        if done.returncode:
            sys.exit(f"{name} failed: {done.stderr.decode()}")
for name in commands:
    print(f"{name:34} median {statistics.median(wall[name]):5.2f} s   best {min(wall[name]):5.2f} s"
          f"   processor {statistics.median(cpu[name]):5.2f} s")
PY
