#!/bin/bash
# How long the bends of lines of 250 000, 500 000 and a million vertices take, by shape.
#
#   src/bench/bends-long-lines.sh [VERTICES [SHAPE ...]]      (default: a million, all shapes of HostileLine)
#
# With VERTICES, a quarter of it, half of it and all.
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -Pquick test-compile dependency:build-classpath -Dmdep.outputFile=target/bench.classpath >&2
exec java -Xmx3g -cp "target/test-classes:target/classes:$(cat target/bench.classpath)" org.spanroom.corpus.LongLines "$@"
