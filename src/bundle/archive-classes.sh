#!/bin/sh
# Makes the archive of loaded classes (class-data sharing) for the place in which this application folder stands.
set -eu
app=$(cd "$(dirname "$0")" && pwd)
java="$app/../runtime/bin/java"
jars=$(sed -n "s|^app.classpath=||p" "$app/tenterbook.cfg" | sed "s|\$APPDIR|$app|g" | paste -s -d : -)
rm -f "$app/tenterbook.jsa"
"$java" -Xshare:dump -Xlog:disable -Xlog:all=error -XX:+UseSerialGC -XX:SharedClassListFile="$app/classes.lst" \
  -XX:SharedArchiveFile="$app/tenterbook.jsa" -cp "$jars" >/dev/null
