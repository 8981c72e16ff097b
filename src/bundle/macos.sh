#!/bin/sh
# NOT TRIED. The application and a disk image for macOS, with the same options as linux.sh; to be run on a Mac with a JDK 17, after
# mvn package -DskipTests. Not signed: whoever opens it must allow it in the system's settings.
set -eu
version=$1
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
bundle="$root/target/bundle"
rm -rf "$bundle"
mkdir -p "$bundle/input" "$bundle/work"
cp -r "$root/target/tenterbook.jar" "$root/target/lib" "$root/sample-archive" "$root/LICENSE" "$bundle/input/"
found=$(jdeps --ignore-missing-deps --multi-release 17 --recursive --print-module-deps --class-path "$bundle/input/lib/*" \
  "$bundle/input/tenterbook.jar" | sed 's/,jdk.jfr//')
also=$(grep -v '^#' "$here/modules.txt" | paste -s -d , -)
jlink --add-modules "$found,$also" --include-locales=en,pt --no-header-files --no-man-pages --strip-java-debug-attributes \
  --output "$bundle/work/runtime"
# macOS takes a version that begins with 1 or more alone.
case $version in 0.*) version=1.${version#0.} ;; esac
jpackage --type dmg "@$here/jpackage.options" --app-version "$version" --icon "$here/icon/tenterbook.icns" --input "$bundle/input" \
  --main-jar tenterbook.jar --runtime-image "$bundle/work/runtime" --dest "$bundle"
