#!/bin/sh
# Renders the spoken prompts of phrases.txt into the resources of this module.
# Needs espeak-ng and sox. Usage: ./render.sh
# See README.md beside it for the licence of what comes out.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
out="$here/../resources/squeezewell/audio/voice"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$out"
while IFS='|' read -r name text; do
  [ -n "$name" ] || continue
  espeak-ng -v en-gb -s 165 -p 45 -w "$work/raw.wav" "$text"
  # No rumble, no hiss, no silence at the ends.
  sox "$work/raw.wav" -b 16 "$work/cut.wav" \
    highpass 120 lowpass 5500 \
    silence 1 0.005 0.5% reverse silence 1 0.005 0.5% reverse
  # One loudness, and short fades against clicks.
  sox -D "$work/cut.wav" -r 22050 -c 1 -b 16 "$out/$name.wav" \
    compand 0.005,0.1 6:-60,-60,-30,-15,-10,-8,0,-6 -6 gain -n -3 \
    fade t 0.003 -0 0.02
done < "$here/phrases.txt"
