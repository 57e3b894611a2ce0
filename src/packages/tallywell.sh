#!/bin/sh
# Starts Tallywell with the Java of this system; without arguments the desktop program.
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd)
if ! command -v java > /dev/null 2>&1; then
    echo "Tallywell needs Java 17 or newer, and there is no Java here." >&2
    exit 1
fi
exec java -jar "$here/tallywell.jar" "$@"
