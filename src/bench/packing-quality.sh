#!/bin/bash
# How well and how fast circles are packed, beside published packings: bores a little wider and a little narrower than the
# published least ones, then crowded cross-sections.
#
#   src/bench/packing-quality.sh [SECTIONS] [SEED]      (default: 1000 crowded cross-sections, seed 5)
#
# Takes a minute or two and all processors. The same verdicts for the same seed.
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -Pquick test-compile dependency:build-classpath -Dmdep.outputFile=target/bench.classpath >&2
exec java -cp "target/test-classes:target/classes:$(cat target/bench.classpath)" org.spanroom.corpus.PackingQuality "${1:-1000}" "${2:-5}"
