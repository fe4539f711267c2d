#!/bin/bash
# Size and shape of the main code: lines by package, types in each, lengths of files and methods.
#
#   src/bench/code-figures.sh [CHECKOUT]      (default: this one)
#
# A method's length runs from the line of its name to the line of its closing brace; methods without a body do not count.
# Needs python3.
set -euo pipefail
cd "${1:-$(dirname "$0")/../..}"
python3 - <<'PY'
import collections, pathlib, re, statistics

ROOT = pathlib.Path("src/main/java/org/spanroom")
METHOD = re.compile(r"^ {4,12}(?!return\b|new\b|else\b|throw\b|if\b|for\b|while\b|switch\b|try\b|case\b|do\b)"
                    r"(?:@\w+ )*(?:[\w.<>?,\[\]@&]+ )*[\w.<>?,\[\]@&]*\w[\w>\]]*\([^;]*$|^ {4,12}(?:public |private )?[A-Z]\w* \{$")


def blanked(text):
    """The text with comments and literals made blank, so that braces count."""
    pattern = r'/\*.*?\*/|//[^\n]*|"""(?:\\.|[^\\])*?"""|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])+\''
    return re.sub(pattern, lambda m: re.sub(r"[^\n]", " ", m.group(0)), text, flags=re.S)


def methods(text):
    lines = blanked(text).split("\n")
    for number, line in enumerate(lines):
        if not METHOD.match(line) or re.match(r"\s*(public |private |static |final |sealed |abstract )*(class|record|interface|enum) ", line):
            continue
        depth = opened = 0
        for end in range(number, len(lines)):
            code = lines[end]
            if not opened and ";" in code.split("{")[0]:
                break
            depth += code.count("{") - code.count("}")
            opened += code.count("{")
            if opened and depth <= 0:
                yield end - number + 1
                break


def percentile(values, share):
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))]


packages = collections.defaultdict(list)
lengths = []
for file in sorted(ROOT.rglob("*.java")):
    text = file.read_text(encoding="utf-8")
    packages[".".join(file.parent.relative_to(ROOT).parts)].append(text.count("\n"))
    lengths += methods(text)
for package, files in packages.items():
    print(f"{package:20} {len(files):4} files {sum(files):6} lines")
files = [n for group in packages.values() for n in group]
print(f"all: {len(files)} files, {sum(files)} lines; files median {statistics.median(files):.0f}, p90 {percentile(files, 0.9)}, most {max(files)}")
print(f"{len(lengths)} methods: median {statistics.median(lengths):.0f}, p90 {percentile(lengths, 0.9)}, p99 {percentile(lengths, 0.99)}, most {max(lengths)}")
PY
