#!/usr/bin/env bash
# Writes each library's PublicAPI.Unshipped.txt anew from what its source says; the difference is what a reviewer reads.
# A build with analyzers fails (RS0016, RS0017) where the listing and the source differ. Run after adding, changing or merging anything public.
set -euo pipefail
export LC_ALL=C DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for file in src/*/PublicAPI.Unshipped.txt; do
    echo '#nullable enable' > "$file"
done

for project in src/*/*.csproj; do
    folder=$(dirname "$project")
    # With an empty listing every public member is a warning that carries its line. --no-incremental: a build that is up to date is silent.
    if ! dotnet build "$project" -f net10.0 --no-incremental -p:RunAnalyzersDuringBuild=true -p:TreatWarningsAsErrors=false -v quiet > "$work/log" 2>&1; then
        cat "$work/log" >&2
        echo "$project does not build; the listings are unfinished" >&2
        exit 1
    fi

    # Projects it depends on are built and complain too: take the lines of this one.
    sed -nE "s#.*: warning RS0016: Symbol '(.*)' is not part of the declared public API.*\[[^]]*/$project(::[^]]*)?\]\$#\1#p" "$work/log" \
        | sort -u >> "$folder/PublicAPI.Unshipped.txt"
    echo "$(($(wc -l < "$folder/PublicAPI.Unshipped.txt") - 1)) public members in $folder"
done
