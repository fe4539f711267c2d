#!/bin/bash
# How close annual plans with connections come to their bound, and how fast, on invented cities of five years (goal: a gap of at most 25 % with 3 000 spans
# and 100 connections, and a value within 1 % of a run ten times as long).
#
#   src/bench/wish-quality.sh [SPANS] [CONNECTIONS] [CITIES] [ITERATIONS] [LONGER]
#     ITERATIONS  of each start; 0 for the default (default 0)
#     LONGER      1 to run ten times as long too, 0 not to (default 0)
#
# Values and bounds are the same on every run, times are not.
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -Pquick test-compile dependency:build-classpath -Dmdep.outputFile=target/bench.classpath >&2
exec java -Xmx3g -cp "target/test-classes:target/classes:$(cat target/bench.classpath)" \
  org.spanroom.program.annual.WishQuality "${1:-3000}" "${2:-100}" "${3:-1}" "${4:-0}" "${5:-0}"
