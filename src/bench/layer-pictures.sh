#!/usr/bin/env bash
# Pictures of the layers as a desktop GIS draws them, from a run of the demo: all of them into target/layer-pictures, and the ones that
# the documentation shows, with few colors, into src/site/resources/images/layers.
#
#   src/bench/layer-pictures.sh
#
# Needs the jar (mvn package), QGIS with python3-qgis, and python3-pil. SPANROOM names another command to run in its place, as
# "java -cp CLASSES org.spanroom.cli.Main". What QGIS complains of is printed as a line that begins with "message:" or "error:".
set -euo pipefail
cd "$(dirname "$0")/../.."
read -r -a spanroom <<< "${SPANROOM:-java -jar target/spanroom.jar}"
work=target/layer-pictures
images=src/site/resources/images/layers
mkdir -p "$work" "$images"
export QT_QPA_PLATFORM=offscreen
draw() {
  /usr/bin/python3 src/bench/layer_pictures.py "$work/$1" "$work/$1-pictures"
}
"${spanroom[@]}" rank --config sample-gis/spanroom.yaml --output "$work/demo" --columns pull,permits,provenance --overwrite
draw demo
"${spanroom[@]}" corridors "$work/demo" --output "$work/corridors" --overwrite
draw corridors
"${spanroom[@]}" connect "$work/demo" --connections sample-gis/connections.csv --output "$work/connect" --overwrite
draw connect
"${spanroom[@]}" program "$work/demo" --config sample-gis/program.yaml --skip prices,draws --output "$work/program" --overwrite
draw program
/usr/bin/python3 - "$work" "$images" << 'END'
import sys
from PIL import Image

work, images = sys.argv[1:]
for source, name in {
    "demo-pictures/project-city": "city",
    "demo-pictures/project-district": "district",
    "demo-pictures/project-street": "street",
    "demo-pictures/legend": "legend",
    "corridors-pictures/project-city": "corridors",
    "connect-pictures/project-city": "connections",
    "program-pictures/project-city": "program",
}.items():
    picture = Image.open(work + "/" + source + ".png").convert("RGB")
    picture.quantize(256, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE).save(images + "/" + name + ".png", optimize=True)
END
ls -l "$images"
