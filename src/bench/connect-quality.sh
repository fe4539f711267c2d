#!/bin/bash
# How good and how fast the search for connections is, on invented cities of 300, 3 000 and 30 000 spans with 20, 100 and 300
# connections: cost, time, peak of the heap, and the cost of a run ten times as long (goal: within 1 %).
#
#   src/bench/connect-quality.sh [SIZES] [CITIES] [ITERATIONS] [LONGER]
#     SIZES       how many of the three sizes, smallest first (default 2)
#     CITIES      of each size (default 1)
#     ITERATIONS  of each start; 0 for the default of the search (default 0)
#     LONGER      1 to run ten times as long too, 0 not to (default 1)
#
# Costs are the same on every run, times are not. All three sizes with the longer runs take an hour.
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -Pquick test-compile dependency:build-classpath -Dmdep.outputFile=target/bench.classpath >&2
exec java -Xmx4g -cp "target/test-classes:target/classes:$(cat target/bench.classpath)" \
  org.spanroom.program.design.ConnectQuality "${1:-2}" "${2:-1}" "${3:-0}" "${4:-1}"
