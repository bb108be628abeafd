#!/bin/sh
# Makes the recordings of the ferry terminal once more, from the project's folder:
#   sh cli/docs/round-demo.sh
# All of them are invented. The first word of each line is the seed of the draw.
set -e
into=cli/src/main/resources/lampwise/cli/round
made=target/round-demo
rm -rf "$made"
mkdir -p "$made"

# seed, sheet, state, seconds, observer, file, fixture to be named in it, further options
make() {
  seed=$1 sheet=$2 state=$3 seconds=$4 observer=$5 file=$6 fixture=$7
  shift 7
  rm -rf "$made/one"
  cli/lampwise simulate --sheet "$sheet" --state "$state" --seconds "$seconds" \
    --observer "$observer" --seed "$seed" --count 1 --out "$made/one" "$@" > "$made/said.txt"
  from=$(ls "$made"/one/*-1.* "$made"/one/*-001.* 2> "$made/said.txt" | head -n 1)
  if [ -n "$fixture" ]; then
    { head -n 1 "$from"; echo "fixture: $fixture"; tail -n +2 "$from"; } > "$made/$file"
  else
    cp "$from" "$made/$file"
  fi
}

# what stands in the second log goes behind the first
join() {
  { cat "$made/first.log"; tail -n +2 "$made/second.log"; } > "$made/$1"
  rm "$made/first.log" "$made/second.log"
}

basin=$into/basin.sheet.yaml
cat > "$made/other.sheet.yaml" << 'END'
lampwise-sheet: 1
title: A unit of another kind
basis: invented
blink: 0.12 s
states:
  other:
    rhythm: 5 blinks 0.48 s apart every 12.2 s
    means: Not on the sheet of the unit
    condition: other
END

make 1 demo cells-low 45 careful pier-01.log pier-01 --target none
make 2 demo resting 60 careful pier-02-idle.log '' --target none
make 3 demo window-covered 40 fast pier-03-light.csv ''
make 4 demo cells-low 40 careful pier-04.log pier-04 --target none
make 5 demo coil-open 14 careless pier-05.log pier-05 --target none
make 6 "$basin" ready 60 careful pier-06.log pier-06 --target none
make 7 demo resting 60 careful first.log lounge-01 --target none
make 8 demo target-seen 40 careful second.log lounge-01 --target 5..12
join lounge-01.log
make 9 "$made/other.sheet.yaml" other 60 careful lounge-02.log lounge-02 --target none
make 10 demo coil-shorted 60 careful lounge-03.log lounge-03 --target none
make 11 demo sees-too-far 30 fast lounge-04-light.csv ''
make 12 demo sees-too-far 45 careful lounge-04-tapped.log '' --target none
make 13 "$basin" cells-low 40 careful lounge-05.log lounge-05 --target none
make 14 demo held-off 45 careful first.log crew-01 --target none
make 15 demo cells-low 45 careful second.log crew-02 --target none
join crew-row.log
make 16 demo cells-low 30 careful crew-03.log crew-03 --target none
echo 'on 29.5 off 28.9' >> "$made/crew-03.log"
make 17 demo hygiene-flush 60 careful deck-02.log deck-02 --target none
make 18 "$basin" coil-open 45 careful deck-03.log deck-03 --target none
make 19 demo target-seen 45 careful deck-04.log deck-04 --target 10..20
make 20 demo cells-low 30 careful lobby-09.log lobby-09 --target none

rm -r "$made/one" "$made/said.txt" "$made/other.sheet.yaml"
ls "$made" > "$into/recordings.txt"
cp "$made"/* "$into"
