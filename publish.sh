#!/usr/bin/env bash
# Makes the native program `warmup` for linux-x64 in out/native, and checks that it writes the very bytes that the same program writes on the runtime.
# Needs a C linker: clang, or gcc. Usage: bash publish.sh [FOLDER]
set -euo pipefail
cd "$(dirname "$0")"
folder=${1:-out/native}
linker=()
command -v clang > /dev/null || linker=(-p:CppCompilerAndLinker=gcc)

# CsvHelper, Ical.Net and Parquet.Net warn that they read types at run time; the comparison below covers what the program uses of them. The compiler's own
# package does not belong into the lock files, which are for every system.
dotnet publish samples/Warmup.Console --configuration Release --runtime linux-x64 --self-contained true --output "$folder" -v quiet -p:PublishAot=true "${linker[@]}" \
    -p:PackAsTool=false -p:TreatWarningsAsErrors=false -p:TrimmerSingleWarn=true -p:NuGetLockFilePath=obj/native.lock.json
rm -f "$folder"/*.pdb "$folder"/*.xml "$folder"/*.dbg
dotnet build samples/Warmup.Console --configuration Release -v quiet

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
native=$(cd "$folder" && pwd)/warmup
runtime="dotnet $PWD/samples/Warmup.Console/bin/Release/net10.0/warmup.dll"

everything() { # program: writes every kind of file into the current folder, and what it says into said.txt
    {
        $1 demo --out demo
        $1 drill --scale bilahari --pattern "ladder + ladder.reversed" --tonic G3 --tempo 60 --tuning just --out a.mid --out a.musicxml --out a.mxl \
            --out a.txt --out a.html --out a.pdf --out a.png --out a.svg --out a.wav --contour c.svg
        $1 singers --singers demo/singers.json
        $1 check --scale 15 --pattern ladder.ends --tonic 220Hz --tempo 60 --singers demo/singers.json --json || echo "exit code $?"
        $1 fit --scale mohanam --pattern ladder --tempo 60 --singers demo/singers.json --json || echo "exit code $?"
        $1 plan --singers demo/singers.json --scales "mohanam, hamsadhwani" --start 2026-12-01 --days 7 --seed 7 --out plan
        printf 'alias,low,high,sustainedSeconds\nWren,A3,E5,14\n' > class.csv
        $1 singers --singers class.csv
        $1 scales --json
        $1 patterns --table --size 3 --scale "mohanam, bilahari" --out table.csv
        $1 patterns --table --size 9 --take 300 --seed 7 --out table.parquet
    } > said.txt
}
for program in native runtime; do
    mkdir "$work/$program"
    (cd "$work/$program" && everything "${!program}")
done
diff -r "$work/runtime" "$work/native"

echo "$(find "$work/native" -type f | wc -l) files, the same bytes from the native program as on the runtime"
du -shc "$folder"/* | sed 's/^/  /'
echo "Other systems compile ahead of time on themselves: there run the same 'dotnet publish' with --runtime linux-arm64, osx-arm64, win-x64 or win-arm64."
