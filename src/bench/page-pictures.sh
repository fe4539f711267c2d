#!/usr/bin/env bash
# Pictures of the page that report makes of the demo, with its annual program and streets: every part at three sizes, light and dark, into
# target/pictures, and the two that the documentation shows, with few colors, into src/site/resources/images. First it prints how large the
# page is and how soon a browser has it ready.
#
#   src/bench/page-pictures.sh
#
# Needs the jar and the compiled tests (mvn package), chromium with chromedriver, and python3-pil. SPANROOM names another command to run in
# place of the jar, PICTURES one in place of the program that takes the pictures. What the browser's console complains of is printed as a line
# that begins with "message:".
set -euo pipefail
cd "$(dirname "$0")/../.."
read -r -a spanroom <<< "${SPANROOM:-java -jar target/spanroom.jar}"
work=target/pictures
images=src/site/resources/images
mkdir -p "$work"
if [ -z "${PICTURES:-}" ]; then
  mvn -o -q -Pquick dependency:build-classpath -Dmdep.outputFile="$work/classpath"
  PICTURES="java -cp target/classes:target/test-classes:$(cat "$work/classpath") org.spanroom.cli.PagePictures"
fi
read -r -a pictures <<< "$PICTURES"
"${spanroom[@]}" rank --config sample-gis/spanroom.yaml --output "$work/demo" --overwrite
"${spanroom[@]}" program "$work/demo" --config sample-gis/program.yaml --skip prices,draws --output "$work/program" --overwrite
"${spanroom[@]}" report "$work/demo" --program "$work/program" --streets sample-gis/streets.geojson --output "$work/demo.html" --overwrite
"${pictures[@]}" "$work/demo.html" "$work"
/usr/bin/python3 - "$work" "$images" << 'END'
import sys
from PIL import Image

work, images = sys.argv[1:]
for name in ("report-page", "report-card"):
    picture = Image.open(work + "/" + name + ".png").convert("RGB")
    picture.quantize(256, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE).save(images + "/" + name + ".png", optimize=True)
END
ls -l "$images"/report-*.png
