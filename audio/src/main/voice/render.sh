#!/bin/sh
# Renders the spoken prompts of phrases.txt and the examiner's lines of examiner.txt into the
# resources of this module. Needs espeak-ng, sox and sha256sum. Usage: ./render.sh [phrases|examiner]
# See README.md beside it for the licence of what comes out.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
out="$here/../resources/squeezewell/audio/voice"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$out/examiner"

# trim EFFECT...: no rumble, no hiss, no silence at the ends.
trim() {
  sox "$work/raw.wav" -b 16 "$work/cut.wav" \
    "$@" highpass 120 lowpass 5500 \
    silence 1 0.005 0.5% reverse silence 1 0.005 0.5% reverse
}

# finish FILE FORMAT...: one loudness, and short fades against clicks.
finish() {
  file=$1
  shift
  sox -D "$work/cut.wav" -c 1 "$@" "$file" \
    compand 0.005,0.1 6:-60,-60,-30,-15,-10,-8,0,-6 -6 gain -n -3 \
    fade t 0.003 -0 0.02
}

if [ "${1:-phrases}" = phrases ]; then
  rm -f "$out"/*.wav
  while IFS='|' read -r name text; do
    [ -n "$name" ] || continue
    espeak-ng -v en-us -s 185 -p 45 -w "$work/raw.wav" "$text"
    trim
    finish "$out/$name.wav" -r 22050 -b 16
  done < "$here/phrases.txt"
fi

# The examiner speaks lower and slower, so that the two can be told apart. A file is named after its
# text, so that a line is found by what it says; 12 kHz and 8 bits of mu-law keep it small.
if [ "${1:-examiner}" = examiner ]; then
  rm -f "$out"/examiner/*.wav
  while IFS= read -r text; do
    [ -n "$text" ] || continue
    name=$(printf %s "$text" | sha256sum | cut -c1-16)
    espeak-ng -v en-gb -s 155 -p 30 -w "$work/raw.wav" -- "$text"
    trim gain -4
    finish "$out/examiner/$name.wav" -r 12000 -e mu-law
  done < "$here/examiner.txt"
fi
