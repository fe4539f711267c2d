#!/usr/bin/env bash
# Pictures of the crew's sheets of the demo that the documentation shows, with few colors, into src/site/resources/images: the cover page of a
# section and the first page of a duct.
#
#   src/bench/sheet-pictures.sh
#
# Needs the jar (mvn package), pdftoppm and python3-pil. SPANROOM names another command to run instead of the jar, SHEETS a PDF that is there
# already.
set -euo pipefail
cd "$(dirname "$0")/../.."
read -r -a spanroom <<< "${SPANROOM:-java -jar target/spanroom.jar}"
work=target/pictures
images=src/site/resources/images
mkdir -p "$work"
sheets="${SHEETS:-}"
if [ -z "$sheets" ]; then
  "${spanroom[@]}" rank --config sample-gis/spanroom.yaml --output "$work/demo" --overwrite
  "${spanroom[@]}" sheets "$work/demo" B149-1:V3-1051:V3-1052 --units us --streets sample-gis/streets.geojson --output "$work/sheets" --overwrite
  sheets="$work/sheets/sheets.pdf"
fi
pdftoppm -r 60 -png -f "${COVER:-1}" -l "${COVER:-1}" -singlefile "$sheets" "$work/sheet-cover"
pdftoppm -r 60 -png -f "${FRONT:-2}" -l "${FRONT:-2}" -singlefile "$sheets" "$work/sheet-duct"
/usr/bin/python3 - "$work" "$images" << 'END'
import sys
from PIL import Image

work, images = sys.argv[1:]
for name in ("sheet-cover", "sheet-duct"):
    picture = Image.open(work + "/" + name + ".png").convert("RGB")
    picture.quantize(256, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE).save(images + "/" + name + ".png", optimize=True)
END
ls -l "$images"/sheet-*.png
