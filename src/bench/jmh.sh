#!/bin/bash
# Times the inner loops: src/bench/jmh.sh [JMH OPTIONS], such as "RowBench -f 1 -prof gc"; without any, all of them.
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -Pquick,jmh test-compile dependency:build-classpath -Dmdep.outputFile=target/jmh.classpath
exec java -cp "target/test-classes:target/classes:$(cat target/jmh.classpath)" org.openjdk.jmh.Main "$@"
