#!/bin/bash
# How often bends are right in drawn lines whose bends are known, by class, beside what an ideal reader of the same lines could know.
#
#   src/bench/bends-accuracy.sh [SPANS] [SEED]      (default: 3000 spans, seed 1)
#
# The spans have noise and missing vertices. The same numbers for the same seed.
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -Pquick test-compile dependency:build-classpath -Dmdep.outputFile=target/bench.classpath >&2
exec java -cp "target/test-classes:target/classes:$(cat target/bench.classpath)" org.spanroom.corpus.BendAccuracy "${1:-3000}" "${2:-1}"
