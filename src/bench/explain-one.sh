#!/bin/bash
# How soon one span is explained: in the demo city, and in a city of many spans beside the time that reading and cutting all of it takes.
#
#   src/bench/explain-one.sh [SPANS] [ROUNDS]      (default: 40000 spans, 5 rounds)
#
# Prints median and best of wall time, and the processor time, of
#   explain, a span of the demo city        java @config/small.args, as the README says
#   explain, a span of a city of SPANS      the same way; the first, the middle and the last of its ranking take turns
#   check, the same city                    reads all and cuts all of it
# and how much of a run of explain the reading takes, as it reports. Needs target/spanroom.jar (mvn package) and python3.
set -euo pipefail

spans=${1:-40000}
rounds=${2:-5}
here=$(cd "$(dirname "$0")/../.." && pwd)
cd "$here"
[ -f target/spanroom.jar ] || { echo "target/spanroom.jar is missing: run 'mvn -DskipTests package' first" >&2; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
echo "$(nproc) processors, load $(cut -d' ' -f1 /proc/loadavg), $(java -version 2>&1 | head -1)"
python3 - "$spans" "$rounds" "$work" <<'PY'
import csv, re, resource, statistics, subprocess, sys, time

spans, rounds, work = sys.argv[1], int(sys.argv[2]), sys.argv[3]
java = ["java", "@config/small.args", "-jar", "target/spanroom.jar"]

def done(arguments):
    run = subprocess.run([*java, *arguments], capture_output=True, text=True)
    if run.returncode:
        sys.exit(f"{' '.join(arguments)} failed: {run.stderr}")
    return run.stderr

def ids(folder):
    with open(f"{folder}/spans.csv", newline="") as rows:
        found = [row["span_id"] for row in csv.DictReader(rows)]
    return [found[0], found[len(found) // 2], found[-1]]

done(["sample", "--spans", spans, "--seed", "1", "--output", f"{work}/city"])
done(["rank", "--config", "sample-gis/spanroom.yaml", "--output", f"{work}/demo", "--no-uncertainty"])
done(["rank", "--config", f"{work}/city/spanroom.yaml", "--output", f"{work}/run", "--no-uncertainty"])
commands = {
    "explain, demo city": [["explain", span, "--run", f"{work}/demo"] for span in ids(f"{work}/demo")],
    f"explain, {spans} spans": [["explain", span, "--run", f"{work}/run"] for span in ids(f"{work}/run")],
    f"check, {spans} spans": [["check", "--config", f"{work}/city/spanroom.yaml"]],
}
for name, several in commands.items():
    wall, cpu, reading = [], [], []
    for i in range(rounds):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        begin = time.monotonic()
        progress = done(several[i % len(several)])
        wall.append(time.monotonic() - begin)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        cpu.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
        found = re.search(r"read inputs +([0-9.]+) s", progress)
        reading.append(float(found.group(1)) if found else float("nan"))
    print(f"{name:28} median {statistics.median(wall):5.2f} s   best {min(wall):5.2f} s"
          f"   processor {statistics.median(cpu):5.2f} s   of it reading {statistics.median(reading):5.2f} s")
PY
