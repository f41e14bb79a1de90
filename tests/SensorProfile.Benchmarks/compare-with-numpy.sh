#!/usr/bin/env bash
# How fast are per-pixel mean and variance of 24 frames of 24 megapixels, against reading the same files and against numpy?
# Makes the frames in a temporary folder (1.2 GB), warms the page cache, and takes the best of several rounds, the three by turns.
# Needs python3 with numpy (another interpreter: PYTHON=...). Run it on a machine that does nothing else.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
python=${PYTHON:-python3}
rounds=${ROUNDS:-5}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

dotnet build -c Release --nologo -v quiet "$here" > "$folder/build.log" || { cat "$folder/build.log"; exit 1; }
"$python" "$here/compare-with-numpy.py" make "$folder"
cat "$folder"/*.fits > /dev/null

TIMEFORMAT=%R
for ((round = 0; round < rounds; round++)); do
    { time cat "$folder"/*.fits > /dev/null; } 2>> "$folder/cat"
    "$python" "$here/compare-with-numpy.py" time "$folder" 3 >> "$folder/numpy"
    dotnet "$here/bin/Release/net10.0/SensorProfile.Benchmarks.dll" time-pixel-moments "$folder" 10 >> "$folder/ours"
done

best() { sort -n "$1" | head -1 | cut -d ' ' -f 1; }
echo "load average: $(cut -d ' ' -f 1-3 /proc/loadavg 2> /dev/null || echo unknown)"
LC_ALL=C awk -v c="$(best "$folder/cat")" -v n="$(best "$folder/numpy")" -v o="$(best "$folder/ours")" 'BEGIN {
    printf "cat %.3f s, numpy %.3f s, ours %.3f s\n", c, n, o
    printf "ours : cat = %.2f, numpy : ours = %.2f, numpy : cat = %.2f\n", o / c, n / o, n / c }'
