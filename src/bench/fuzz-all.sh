#!/bin/bash
# All fuzz targets in turn, each for so many seconds: executions, coverage and failures of each; then, by package, how many lines of the
# readers all that was kept covers.
#
#   src/bench/fuzz-all.sh [SECONDS] [FOLDER]      (default: 900 seconds each, target/fuzz)
#
# FOLDER holds what the fuzzer learns and is used again the next time; name one outside of target to keep it. A failing input is left in
# FOLDER, with the output of its target. Ends with status 1 if a target has failed. FUZZ_MAVEN has further options of Maven, e.g. -o.
set -uo pipefail

seconds=${1:-900}
cd "$(dirname "$0")/../.."
folder=$(realpath -m "${2:-target/fuzz}")
maven=(mvn -q -Pquick,fuzz -Dfuzz.seconds="$seconds" -Dfuzz.folder="$folder" ${FUZZ_MAVEN:-})
"${maven[@]}" test-compile exec:exec@seeds || exit 1
"${maven[@]}" exec:exec@run
status=$?
"${maven[@]}" -Djacoco.skip=false exec:exec@replay jacoco:report || status=1
awk -F, '
  NR > 1 && $2 ~ /^org\.spanroom\.(config|input)/ { missed[$2] += $8; covered[$2] += $9 }
  NR > 1 && $3 ~ /^(Recorded(Run|Account|Spans)|StreetReader|FieldOverlay|FieldChanges)$/ { missed[$2 " " $3] += $8; covered[$2 " " $3] += $9 }
  END {
    for (name in covered) {
      printf "%-48s %6d of %6d lines covered  %5.1f %%\n", name, covered[name], covered[name] + missed[name], 100 * covered[name] / (covered[name] + missed[name])
    }
  }' target/site/jacoco/jacoco.csv | sort
exit $status
