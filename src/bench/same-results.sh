#!/bin/bash
# Whether two versions of the program give the same results, for changes that must not move any.
#
#   src/bench/same-results.sh BEFORE AFTER [ROUTES]      (default: 100000 routes)
#
# BEFORE and AFTER are two checkouts, each with its target/spanroom.jar (mvn -DskipTests package). Each runs the demo city with its own
# config in every format, and one city of about so many routes, which BEFORE invents, in GeoPackage and CSV; then the results are
# compared file by file: bytes for CSV, GeoJSON and Shapefile; every table, row by row, for GeoPackage; every member but the config and
# the names of inputs for run.json, where new members are named and do not count. Files whose rows are the same in another order are named, and do not count as different.
#
# Environment: JAVA_OPTS is handed to java; WORK names the work folder, which is then kept.
# Exit code 0: the same; 1: different. Needs java and python3.
set -euo pipefail

[ $# -ge 2 ] || { sed -n '2,13s/^# \{0,1\}//p' "$0"; exit 2; }
before=$(cd "$1" && pwd)
after=$(cd "$2" && pwd)
routes=${3:-100000}
# An average route of the invented city passes this many spans, in hundredths.
spans=$((routes * 265 / 100))
read -r -a java_opts <<<"${JAVA_OPTS--XX:+UseParallelGC}"
work=${WORK:-$(mktemp -d)}
mkdir -p "$work"
[ -n "${WORK:-}" ] || trap 'rm -rf "$work"' EXIT

# rank CHECKOUT OUTPUT ARGUMENTS...: one run from the folder of the checkout.
rank() {
    local checkout=$1 output=$2
    shift 2
    local config=sample-gis/spanroom.yaml
    [ -f "$checkout/$config" ] || config=config/spanroom.yaml
    (cd "$checkout" && java "${java_opts[@]}" -jar target/spanroom.jar rank --config "$config" --output "$output" --overwrite "$@") \
        >"$output.log" 2>&1 || { cat "$output.log" >&2; exit 2; }
}

for side in before after; do
    rank "${!side}" "$work/demo-$side" --formats geopackage,csv,geojson,shapefile
done
if [ "$routes" -gt 0 ]; then
    city=$work/city
    [ -d "$city" ] || (cd "$before" && java "${java_opts[@]}" -jar target/spanroom.jar sample --spans "$spans" --seed 1 --output "$city") >/dev/null
    for side in before after; do
        rank "${!side}" "$work/city-$side" --formats geopackage,csv \
            --routes "$city/ducts.geojson" --vaults "$city/vaults.geojson" --contents "$city/contents.csv" --zones "$city/zones.gpkg"
    done
fi

python3 - "$work" <<'PY'
import json, pathlib, sqlite3, sys

work = pathlib.Path(sys.argv[1])
differences = 0


def report(what, same_set):
    global differences
    print(f"  {what}: " + ("the same rows in another order" if same_set else "DIFFERENT"))
    differences += not same_set


def compare_tables(before, after):
    with sqlite3.connect(before) as one, sqlite3.connect(after) as two:
        names = [{row[0] for row in db.execute("select table_name from gpkg_contents")} for db in (one, two)]
        for name in sorted(names[0] | names[1]):
            if name not in names[0] or name not in names[1]:
                report(f"{before.name} {name} is in one only", False)
                continue
            # fid numbers the rows in the order of the file.
            columns = [[c[1] for c in db.execute(f'pragma table_info("{name}")') if c[1] != "fid"] for db in (one, two)]
            if columns[0] != columns[1]:
                report(f"{before.name} {name}, its columns", False)
                continue
            query = "select " + ",".join(f'"{c}"' for c in columns[0]) + f' from "{name}" order by fid'
            if any(a != b for a, b in zip(one.execute(query), two.execute(query))) \
                    or len({db.execute(f'select count(*) from "{name}"').fetchone() for db in (one, two)}) > 1:
                rows = [sorted(map(hash, db.execute(query))) for db in (one, two)]
                report(f"{before.name} {name}", rows[0] == rows[1])


def compare_records(before, after):
    one, two = (json.loads(file.read_text()) for file in (before, after))
    for member in sorted(set(one) | set(two)):
        if member in ("started_at", "config"):
            continue
        sides = [run.get(member) for run in (one, two)]
        if member == "inputs":
            sides = [[{k: v for k, v in side.items() if k not in ("file", "parts")} for side in run or []] for run in sides]
        if member not in one:
            print(f"  run.json {member}: new, {str(sides[1])[:120]}")
        elif sides[0] != sides[1]:
            report(f"run.json {member}: {str(sides[0])[:120]} and {str(sides[1])[:120]}", False)


for name in ("demo", "city"):
    before, after = work / f"{name}-before", work / f"{name}-after"
    if not before.is_dir():
        continue
    files = sorted({file.name for side in (before, after) for file in side.iterdir()} - {".results"})
    print(f"{name}: {len(files)} files")
    for file in files:
        one, two = before / file, after / file
        if not one.exists() or not two.exists():
            report(f"{file} is in one only", False)
        elif file == "run.json":
            compare_records(one, two)
        elif file.endswith(".gpkg"):
            compare_tables(one, two)
        elif one.read_bytes() != two.read_bytes():
            report(file, sorted(one.read_bytes().split(b"\n")) == sorted(two.read_bytes().split(b"\n")))
print("the same results" if not differences else f"{differences} differences")
sys.exit(bool(differences))
PY
