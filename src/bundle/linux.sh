#!/bin/sh
# The application folder and the Debian package, from target/tenterbook.jar and target/lib. See README.md beside this file.
set -eu
version=$1
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
bundle="$root/target/bundle"
rm -rf "$bundle"
mkdir -p "$bundle/input" "$bundle/work"
cp -r "$root/target/tenterbook.jar" "$root/target/lib" "$root/sample-archive" "$root/LICENSE" "$here/archive-classes.sh" "$bundle/input/"

# The runtime: what the classes name, but for the flight recorder, without which the library for SQL starts sooner; and what is found by name.
found=$(jdeps --ignore-missing-deps --multi-release 17 --recursive --print-module-deps --class-path "$bundle/input/lib/*" \
  "$bundle/input/tenterbook.jar" | sed 's/,jdk.jfr//')
also=$(grep -v '^#' "$here/modules.txt" | paste -s -d , -)
echo "Modules: $found,$also"
jlink --add-modules "$found,$also" --include-locales=en,pt --no-header-files --no-man-pages --strip-java-debug-attributes \
  --output "$bundle/work/runtime"

java "$here/Training.java" "$bundle/work/runtime/bin/java" "$bundle/input/tenterbook.jar" "$root/sample-archive" "$bundle/work" \
  "$bundle/input/classes.lst"

jpackage --type app-image "@$here/jpackage.options" --app-version "$version" --icon "$here/icon/tenterbook.png" \
  --input "$bundle/input" --main-jar tenterbook.jar --runtime-image "$bundle/work/runtime" --dest "$bundle"

# The package is made before the archive of classes, which holds for one place alone and is made again where it is installed.
jpackage --type deb --name tenterbook --app-version "$version" --app-image "$bundle/tenterbook" --dest "$bundle" \
  --resource-dir "$here/debian" --linux-shortcut --linux-menu-group "Office;" --linux-app-category misc \
  --description "A dye studio's archive of finished pieces" --vendor Tenterbook --license-file "$root/LICENSE"
"$bundle/tenterbook/lib/app/archive-classes.sh"
rm -rf "$bundle/input" "$bundle/work"
