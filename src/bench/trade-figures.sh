#!/bin/bash
# The figures of the trade that a change of the rules moves, for two runs of the same data side by side.
#
#   src/bench/trade-figures.sh BEFORE AFTER
#
# BEFORE and AFTER are two folders of results of 'rank', with CSV among their formats and --columns all: spans.csv, run_spans.csv.gz, pulls.csv, permits.csv, run.json; the kinds
# of vaults are read from spanroom.gpkg where it is there. Columns may have their present names or those of earlier versions. What a run did
# not write is shown as '-'.
#
# Prints: what is ranked and why the rest is not; sections; room beside the innerducts; which rules and limits apply; jam ratios; the end that is
# proposed; packings left undecided; permits; and which spans of the two top 20s moved, with the parts of their points. Exit code 0, or 2 on wrong use.
# Needs python3.
set -euo pipefail

[ $# -eq 2 ] && [ -f "$1/spans.csv" ] && [ -f "$2/spans.csv" ] || { sed -n '2,13s/^# \{0,1\}//p' "$0" >&2; exit 2; }
python3 - "$1" "$2" <<'PY'
import collections, csv, gzip, json, pathlib, sqlite3, sys

TOP = 20
FORMER_NAMES = {
    "positions_now": ["positions_before"],
    "positions_gained": ["cables_gained"],
    "pull_utilization_pct": ["pull_utilisation_pct"],
    "utilization_a_pct": ["utilisation_a_pct"],
    "utilization_b_pct": ["utilisation_b_pct"],
    "proposed_end": ["pull_better_end"],
}
NOT_ENTERED = {"handhole", "pull box"}


def cell(row, name):
    """The text of a column by its present name or a former one; empty where it is not there."""
    for known in [name, *FORMER_NAMES.get(name, [])]:
        if known in row:
            return row[known]
    return ""


def number(row, name):
    text = cell(row, name)
    return float(text) if text else None


def keys(row, name):
    return [key for key in cell(row, name).split(";") if key]


class Run:
    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        self.spans = self.table("spans.csv")
        with gzip.open(self.folder / "run_spans.csv.gz", "rt", newline="", encoding="utf-8") as file:
            self.reasons = {row["span_id"]: row["reasons"].split(";") for row in csv.DictReader(file)}
        self.pulls = self.table("pulls.csv")
        self.permits = self.table("permits.csv")
        record = self.folder / "run.json"
        self.record = json.loads(record.read_text(encoding="utf-8")) if record.exists() else {}
        self.ranked = sorted((row for row in self.spans if row["rank"]), key=lambda row: int(row["rank"]))
        self.top = self.ranked[:TOP]
        self.by_id = {row["span_id"]: row for row in self.spans}

    def table(self, name):
        file = self.folder / name
        if not file.exists():
            return None
        with file.open(encoding="utf-8", newline="") as text:
            return list(csv.DictReader(text))

    def has(self, *columns):
        return bool(self.spans) and all(any(n in self.spans[0] for n in [c, *FORMER_NAMES.get(c, [])]) for c in columns)

    def has_zones(self):
        return any(part.get("role") == "zones" for part in self.record.get("inputs", []))

    def vault_kinds(self):
        file = self.folder / "spanroom.gpkg"
        if not file.exists():
            return {}
        with sqlite3.connect(f"file:{file}?mode=ro", uri=True) as database:
            return dict(database.execute("select vault_id, lower(kind) from vaults"))

    def kinds_not_entered(self):
        kinds = self.record.get("config", {}).get("vault_kinds", {})
        said = {kind.lower() for kind, rule in kinds.items() if isinstance(rule, dict) and str(rule.get("entered")).lower() in ("false", "no")}
        return said or NOT_ENTERED


def section(row):
    """The spans of one bank between the same two vaults, drawn either way; a duct without a bank alone."""
    bank = ("bank", row["duct_bank"]) if row["duct_bank"].strip() else ("duct", row["duct"])
    return (*bank, *sorted((row["vault_a"], row["vault_b"])))


def parts(row):
    return {name[:-len("_points")]: float(value) for name, value in row.items()
            if name.endswith("_points") and not name.startswith("score_") and value}


def share(part, whole):
    return f"{part:,} of {whole:,} ({100 * part / whole:.1f} %)" if whole else "-"


def mix(counter):
    return [f"{count:6,} {key or '(none)'}" for key, count in sorted(counter.items(), key=lambda item: (-item[1], item[0]))] or ["-"]


lines = []


def show(title, figure):
    """One figure of both runs: a text, or a list of texts."""
    sides = []
    for run in runs:
        try:
            found = figure(run)
        except (KeyError, TypeError):
            found = None
        found = "-" if found is None else found
        sides.append(found if isinstance(found, list) else [str(found)])
    lines.append((title, *sides))


def head(title):
    lines.append((title,))


def flush():
    width = max([len(text) for line in lines if len(line) > 1 for text in line[1]] + [20])
    title_width = max(len(line[0]) for line in lines if len(line) > 1)
    for line in lines:
        if len(line) == 1:
            print(f"\n{line[0]}")
            continue
        title, before, after = line
        for i in range(max(len(before), len(after))):
            left = before[i] if i < len(before) else ""
            right = after[i] if i < len(after) else ""
            print(f"  {title if i == 0 else '':{title_width}}  {left:{width}}  {right}".rstrip())
    lines.clear()


# --- ranked and excluded

def excluded(run):
    return mix(collections.Counter(run.record["spans_excluded"]))


def by_empty_duct(run):
    return share(sum(row["exclusion"] == "empty_duct_in_bank" for row in run.spans), len(run.spans))


def among_reasons(reason):
    return lambda run: share(sum(reason in run.reasons[row["span_id"]] for row in run.spans), len(run.spans))


def with_caution(caution):
    return lambda run: share(sum(caution in keys(row, "cautions") for row in run.ranked), len(run.ranked))


# --- sections

def spare_sections(run):
    if not run.has("spare"):
        return None
    spare = {section(row) for row in run.spans if row["spare"] == "true"}
    return share(len(spare), len({section(row) for row in run.spans}))


def recorded_sections(run):
    rows = run.table("sections.csv")
    return None if rows is None else f"{len(rows):,}, {sum(bool(row['section_rank']) for row in rows):,} of them ranked"


def pairs_in_a_section(run):
    counts = collections.Counter(section(row) for row in run.top)
    return sum(count * (count - 1) // 2 for count in counts.values())


# --- room

def enough_now(rows):
    """Where the positions now are as many as the new cables that recovery makes room for, or more."""
    def figure(run):
        if not run.has("positions_now", "new_cables"):
            return None
        some = [row for row in rows(run) if number(row, "new_cables")]
        return share(sum(number(row, "positions_now") >= number(row, "new_cables") for row in some), len(some))
    return figure


def beside(run):
    if not run.has("positions_now_beside"):
        return None
    return share(sum((number(row, "positions_now_beside") or 0) > 0 for row in run.ranked), len(run.ranked))


def distinct(column, rows):
    def figure(run):
        values = collections.Counter(cell(row, column) for row in rows(run))
        if not run.has(column) or not values:
            return None
        value, count = values.most_common(1)[0]
        return f"{len(values):,}; most frequent {value} ({count:,} spans)"
    return figure


def column_mix(column):
    return lambda run: mix(collections.Counter(cell(row, column) for row in run.ranked)) if run.has(column) else None


def jam(run):
    critical = [row for row in run.ranked if 2.8 <= (number(row, "jam_ratio") or 0) <= 3.2]
    said = sum("may_jam" in keys(row, "cautions") for row in critical)
    first = run.ranked[0]
    return [f"{len(critical):,} spans, {said:,} of them with the caution",
            f"rank 1: ratio {cell(first, 'jam_ratio') or '-'}, {'with' if 'may_jam' in keys(first, 'cautions') else 'without'} the caution"]


def undecided(run):
    columns = [name for name in ("packing_before", "packing_now", "packing_after", "next_sleeve") if run.has(name)]
    found = {name: sum(row[name] == "undecided" for row in run.spans) for name in columns}
    any_of_them = sum(any(row[name] == "undecided" for name in columns) for row in run.spans)
    return [share(any_of_them, len(run.spans))] + [f"{count:6,} {name}" for name, count in found.items()]


# --- pulling

def use_by_end(run):
    """The utilization of the tightest limit at each end, over all innerducts of a span."""
    use = {}
    for pull in run.pulls:
        ends = use.setdefault(pull["span_id"], {"a": 0, "b": 0})
        for end in ends:
            ends[end] = max(ends[end], number(pull, f"utilization_{end}_pct") or 0)
    return use


def worse_end(by_more_than):
    def figure(run):
        use = use_by_end(run)
        both = [row for row in run.ranked if row["pull_outcome"] == "both" and row["span_id"] in use]
        worse = 0
        for row in both:
            ends = use[row["span_id"]]
            end = cell(row, "proposed_end")
            worse += ends[end] > ends["b" if end == "a" else "a"] + by_more_than
        return share(worse, len(both))
    return figure


def outcome(key):
    return lambda run: share(sum(row["pull_outcome"] == key for row in run.ranked), len(run.ranked))


# --- permits

def confined(run):
    needing = [row for row in run.ranked if "confined_space_entry" in needed(run, row)]
    kinds = run.vault_kinds()
    found = [f"{len(needing):,} ranked spans need confined space entry"]
    if kinds:
        closed = run.kinds_not_entered()
        ends = [sum(kinds.get(row[end]) in closed for end in ("vault_a", "vault_b")) for row in needing]
        found.append(f"{sum(n == 2 for n in ends):6,} of them with both vaults of kinds that are not entered")
        found.append(f"{sum(n == 1 for n in ends):6,} with one")
    return found


def everywhere(run):
    """What every recovery needs: runs list it in their config only; runs of earlier versions also in every row."""
    permit = run.record.get("config", {}).get("permit", {})
    return set(permit.get("everywhere", {}).get("recovery", []))


def needed(run, row):
    """All permits that recovery of a span needs; none where it has no lead days: no innerduct comes out, or no zones were read."""
    here = set(keys(row, "recovery_needs"))
    return here | everywhere(run) if run.has_zones() and cell(row, "recovery_lead_days") else here


def needs(run):
    return mix(collections.Counter(key for row in run.ranked for key in needed(run, row)))


def pieces(run):
    if run.permits is None:
        return None
    most = collections.Counter((row["span_id"], row["zone_id"]) for row in run.permits)
    return f"{len(run.permits):,} stretches; at most {max(most.values(), default=0)} of a span in a zone"


# --- the top

def moved(run, other):
    """The top of one run with the ranks in both, what the points are made of in both, and why a span is excluded."""
    print(f"  {'rank':>4}  {'rank':>5}  {'points':>15}  span")
    for row in run.top:
        there = other.by_id.get(row["span_id"])
        before, after = (row, there) if run is runs[0] else (there, row)
        ranks = [(side["rank"] or "none") if side else "gone" for side in (before, after)]
        points = [f"{float(side['score_points']):.2f}" if side and side["score_points"] else "-" for side in (before, after)]
        print(f"  {ranks[0]:>4}  {ranks[1]:>5}  {points[0]:>6} > {points[1]:>6}  {row['span_id']}")
        if before and after:
            was, now = parts(before), parts(after)
            changed = [f"{key} {was.get(key, 0):.2f} > {now.get(key, 0):.2f}" for key in {**was, **now}
                       if abs(was.get(key, 0) - now.get(key, 0)) >= 0.005]
            if before["rank"] != after["rank"]:
                print(f"{'':32}{', '.join(changed) or 'the same points'}")
            for side, name in ((before, "before"), (after, "after")):
                if not side["rank"]:
                    print(f"{'':32}excluded {name}: {side['exclusions'].replace(';', ', ')}")


runs = [Run(folder) for folder in sys.argv[1:3]]
ranked = lambda run: run.ranked
top_100 = lambda run: run.ranked[:100]

show("", lambda run: "before" if run is runs[0] else "after")
head("Ranked and excluded")
show("spans ranked", lambda run: share(len(run.ranked), len(run.spans)))
show("excluded, by the first reason", excluded)
show("first reason empty_duct_in_bank", by_empty_duct)
show("empty_duct_in_bank among the reasons", among_reasons("empty_duct_in_bank"))
show("no_room_gained among the reasons", among_reasons("no_room_gained"))
show("room_without_recovery among the reasons", among_reasons("room_without_recovery"))

head("Sections: the spans of one bank between the same two vaults")
show("all", lambda run: f"{len({section(row) for row in run.spans}):,}")
show("with a ranked span", lambda run: f"{len({section(row) for row in run.ranked}):,}")
show("rows of sections.csv", recorded_sections)
show("with a sound empty duct", spare_sections)
show(f"pairs of the top {TOP} in one section", pairs_in_a_section)

head("Room")
show("ranked: positions now >= new cables of recovery", enough_now(ranked))
show("all spans: the same", enough_now(lambda run: run.spans))
show("ranked: something fits beside the innerducts now", beside)
show("ranked: caution positions_beside_now", with_caution("positions_beside_now"))
show("rule that binds, ranked", column_mix("binding_rule"))
show("points of room, distinct values in the top 100", distinct("room_gained_points", top_100))
show("jam ratio 2.8 to 3.2, ranked", jam)
show("packings undecided, all spans", undecided)

head("Pulling")
show("tightest limit, ranked", column_mix("pull_tightest_limit"))
show("utilization that is scored, distinct values", distinct("ease_pull_pct", ranked))
show("ease_pull, distinct values", distinct("ease_pull_value", ranked))
show("both ends possible, the worse one proposed", worse_end(0))
show("the same, worse by more than 10 points", worse_end(10))
show("ranked, neither end possible", outcome("neither"))

head("Permits")
show("confined space", confined)
show("what recovery needs, ranked", needs)
show("zones", pieces)
flush()

for run, name in zip(runs, ("before", "after")):
    print(f"\nThe top {TOP} {name}: rank before, rank after, points before > after")
    moved(run, runs[1] if run is runs[0] else runs[0])
PY
