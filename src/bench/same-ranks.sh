#!/bin/bash
# Whether two versions of the program give the spans of the demo city the same ranks, whatever they call their columns and spans.
#
#   src/bench/same-ranks.sh BEFORE AFTER
#
# BEFORE and AFTER are two checkouts, each with its target/spanroom.jar (mvn -DskipTests package). Each ranks the demo city with its own
# config; then spans are matched by duct and vaults, and their ranks and scores compared. Spans of equal score are in the order of
# their ids: where these have changed, such spans may change places, and are counted apart.
#
# Environment: WORK names the work folder, which is then kept.
# Exit code 0: no rank differs but among equal scores; 1: some do. Needs java and python3.
set -euo pipefail

[ $# -eq 2 ] || { sed -n '2,12s/^# \{0,1\}//p' "$0"; exit 2; }
work=${WORK:-$(mktemp -d)}
mkdir -p "$work"
[ -n "${WORK:-}" ] || trap 'rm -rf "$work"' EXIT

rank() {
    (cd "$1" && java -jar target/spanroom.jar rank --config sample-gis/spanroom.yaml --formats csv --output "$2" --overwrite) \
        >"$2.log" 2>&1 || { cat "$2.log" >&2; exit 2; }
}
rank "$1" "$work/before"
rank "$2" "$work/after"

python3 - "$work" <<'PY'
import collections
import csv
import pathlib
import sys

work = pathlib.Path(sys.argv[1])


def spans(run):
    found, seen = {}, collections.Counter()
    with open(work / run / "spans.csv", newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            ends = [row.get("vault_a") or row.get("from_vault", ""), row.get("vault_b") or row.get("to_vault", "")]
            key = (row["duct"], *sorted(ends))
            seen[key] += 1
            found[(*key, seen[key])] = (row["rank"], row["score_points"], row["exclusion"])
    return found


before, after = spans("before"), spans("after")
only = len(before.keys() ^ after.keys())
moved = [key for key in before.keys() & after.keys() if before[key] != after[key]]
ties = [key for key in moved if before[key][1:] == after[key][1:]]
print(f"spans: {len(before):,} before, {len(after):,} after, {only:,} in one run only")
print(f"rank, score or exclusion differs: {len(moved) - len(ties):,}")
print(f"changed places among equal scores: {len(ties):,}")
for key in sorted(moved)[:10]:
    print("  ", *key, before[key], "->", after[key])
sys.exit(1 if only or len(moved) > len(ties) else 0)
PY
