# NOT TRIED. The application folder and an installer for Windows, with the same options as linux.sh; to be run with a JDK 17 and the
# WiX toolset 3, after mvn package -DskipTests. Not signed.
param([string]$version = "0.1.0")
$ErrorActionPreference = "Stop"
$here = $PSScriptRoot
$root = (Resolve-Path "$here\..\..").Path
$bundle = "$root\target\bundle"
Remove-Item -Recurse -Force $bundle -ErrorAction SilentlyContinue
New-Item -ItemType Directory "$bundle\input", "$bundle\work" | Out-Null
Copy-Item -Recurse "$root\target\tenterbook.jar", "$root\target\lib", "$root\sample-archive", "$root\LICENSE" "$bundle\input"
$found = (& jdeps --ignore-missing-deps --multi-release 17 --recursive --print-module-deps --class-path "$bundle\input\lib\*" "$bundle\input\tenterbook.jar") -replace ",jdk.jfr", ""
$also = (Get-Content "$here\modules.txt" | Where-Object { $_ -notmatch "^#" }) -join ","
& jlink --add-modules "$found,$also" --include-locales=en,pt --no-header-files --no-man-pages --strip-java-debug-attributes --output "$bundle\work\runtime"
& jpackage --type msi "@$here\jpackage.options" --app-version $version --icon "$here\icon\tenterbook.ico" --input "$bundle\input" `
  --main-jar tenterbook.jar --runtime-image "$bundle\work\runtime" --win-per-user-install --win-menu --win-shortcut --dest $bundle
