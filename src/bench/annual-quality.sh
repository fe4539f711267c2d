#!/bin/bash
# How close the program of years comes to its bound, and how fast, on invented cities of 300, 1 000 and 3 000 sections (twice as many tasks) and
# five years, with the library for integer programs and without (goal: a gap of at most 1 % in 60 s on two processors).
#
#   src/bench/annual-quality.sh [SIZES] [CITIES] [WITHOUT]
#     SIZES    how many of the three sizes, smallest first; or a number of sections (default 3)
#     CITIES   of each size (default 1)
#     WITHOUT  1 to do it without the library too, 0 not to (default 1)
#
# Values and bounds are the same on every run, times are not.
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -Pquick test-compile dependency:build-classpath -Dmdep.outputFile=target/bench.classpath >&2
exec java -Xmx3g -cp "target/test-classes:target/classes:$(cat target/bench.classpath)" \
  org.spanroom.program.annual.AnnualQuality "${1:-3}" "${2:-1}" "${3:-1}"
