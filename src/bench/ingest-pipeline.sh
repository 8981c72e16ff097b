#!/usr/bin/env bash
# The work of taking photographs in, done with general-purpose tools, two photographs at a time:
# metadata (exiftool), three upright previews (vipsthumbnail), a palette (ImageMagick).
# Hashing and keeping the original are left out, so the tools have less to do than the program.
#
#   src/bench/ingest-pipeline.sh PHOTOS OUT [each|kind]
#
#   each   every tool is given every file, as one would type it
#   kind   one exiftool for all files, small previews from large ones, the palette from the smallest
#
# Ends with a line "clock SECONDS busy USER SYSTEM". Needs exiftool, libvips-tools and imagemagick (Debian's names).
set -euo pipefail
export LC_ALL=C
photos=$1
# vipsthumbnail takes a relative name to be beside the photograph
out=$(mkdir -p "$2" && cd "$2" && pwd)
way=${3:-each}
palette_tool=$(command -v convert-im6.q16 || command -v magick || command -v convert) || palette_tool=
for tool in exiftool vipsthumbnail "$palette_tool"; do
  command -v "${tool:-convert}" >/dev/null || { echo "absent: ${tool:-convert}" >&2; exit 3; }
done
# Two jobs fill two processors; more threads inside them would only add work.
export VIPS_CONCURRENCY=1 MAGICK_THREAD_LIMIT=1 out palette_tool

thumbnail() { vipsthumbnail "$1" --size "$2x$2>" -o "$out/$3-$2.jpg[Q=86,strip]"; }
palette() { "$palette_tool" "$1" -colors 12 -format %c histogram:info:- >"$out/$2.txt"; }

each() {
  local name
  name=$(basename "$1" .jpg)
  exiftool -json "$1" >"$out/$name.json"
  for size in 2048 960 320; do thumbnail "$1" "$size" "$name"; done
  palette "$1" "$name"
}

kind() {
  local name
  name=$(basename "$1" .jpg)
  thumbnail "$1" 2048 "$name"
  thumbnail "$out/$name-2048.jpg" 960 "$name"
  thumbnail "$out/$name-960.jpg" 320 "$name"
  palette "$out/$name-320.jpg" "$name"
}
export -f thumbnail palette each kind

TIMEFORMAT='clock %R busy %U %S'
time {
  if [ "$way" = kind ]; then
    exiftool -json "$photos" >"$out/all.json" &
  fi
  find "$photos" -name '*.jpg' -print0 | sort -z | xargs -0 -n 1 -P 2 bash -c "$way \"\$1\"" _
  wait
}
