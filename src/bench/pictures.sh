#!/usr/bin/env bash
# The pictures of the documentation, made again from a run of the demo: src/site/resources/images.
#
#   src/bench/pictures.sh
#
# Needs the jar (mvn package) and python3. The cross-section is the program's own drawing (explain --svg); the maps show the ranked spans,
# what connections take, and the annual program.
set -euo pipefail
cd "$(dirname "$0")/../.."
span=B203-2:V4-1012:V4-1013
jar=target/spanroom.jar
work=target/pictures
images=src/site/resources/images
mkdir -p "$work" "$images"
java -jar "$jar" rank --config sample-gis/spanroom.yaml --output "$work/demo" --formats geopackage,geojson --overwrite
java -jar "$jar" explain "$span" --run "$work/demo" --svg "$work/sheet.svg" --overwrite > "$work/explain.txt"
python3 src/bench/pictures.py "$work/sheet.svg" "$work/demo" "$images"
java -jar "$jar" connect "$work/demo" --connections sample-gis/connections.csv --output "$work/connect" --overwrite
python3 src/bench/connections_map.py "$work/connect" "$work/demo" "$images/connections-map.svg"
java -jar "$jar" program "$work/demo" --config sample-gis/program.yaml --skip prices,draws --output "$work/program" --overwrite
python3 src/bench/program_pictures.py "$work/program" "$work/demo" "$images"
ls -l "$images"
