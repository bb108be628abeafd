// --- What the page knows besides. ---

let record = fresh();
let origin = 0; // where the recording's start lies on the page's clock
let held = null; // the blink that is being held
const holders = new Set(); // fingers and keys that hold it
let releasedAt = -Infinity;
let sureUntil = -Infinity; // until when a second press stops a recording that is too short
let met = false;
let fastSaid = false;
let ticker = 0;
let wake = null;

const since = (time) => Math.max(0, time - origin);
const watching = () => record.phase === 'watching';

function keep() {
  try {
    sessionStorage.setItem(KEPT, JSON.stringify(record));
  } catch (e) {
    // Without storage a reload loses the recording, and nothing else changes.
  }
}

function restore() {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEPT) || 'null');
    if (kept && Array.isArray(kept.marks)) {
      record = kept;
    }
  } catch (e) {
    return;
  }
  if (watching()) {
    record.phase = 'stopped';
    record.left = true;
  }
}

// --- Marks. ---

function press(holder, time) {
  if (!watching() || wordsOf(record) || holders.has(holder)) {
    return;
  }
  holders.add(holder);
  if (holders.size === 1) {
    held = { kind: 'blink', on: since(time), off: null };
    record.marks.push(held);
    drawMarks();
  }
}

// Where the end was not seen, only the start is kept.
function release(holder, time, seen) {
  if (!holders.delete(holder) || holders.size > 0) {
    return;
  }
  releasedAt = time;
  if (held && seen && since(time) - held.on >= HOLD_MS) {
    held.off = since(time);
  }
  held = null;
  drawMarks();
}

function releaseAll(time, seen) {
  for (const holder of Array.from(holders)) {
    release(holder, time, seen);
  }
}

function markHand(time) {
  const hands = handsOf(record);
  const present = !(hands.length > 0 && hands[hands.length - 1].present);
  record.marks.push({ kind: 'hand', present, at: since(time) });
  say(present ? 'Hand in noted' : 'Hand out noted');
  drawMarks();
}

function markEvent(name, label, time) {
  record.marks.push({ kind: 'event', name, at: since(time) });
  say(label + ' noted');
  drawMarks();
}

// Taps that cannot be trusted give way to words; undo brings them back.
function writeWords() {
  const blinks = blinksOf(record);
  record.marks = record.marks.filter((mark) => mark.kind !== 'blink');
  record.marks.push({ kind: 'saw', phrase: 'fast blinks', blinks });
  holders.clear();
  held = null;
  say('Fast blinks written in words');
  drawMarks();
}

function undo() {
  const last = record.marks.pop();
  if (!last) {
    return;
  }
  if (last.kind === 'saw') {
    record.marks.push(...last.blinks);
    record.tapsKept = true;
  }
  if (last === held) {
    holders.clear();
    held = null;
  }
  say('Taken back: ' + nameOf(last));
  drawMarks();
}

function nameOf(mark) {
  switch (mark.kind) {
    case 'blink': return `blink, ${tenths(mark.on)}`;
    case 'hand': return `hand ${mark.present ? 'in' : 'out'}, ${tenths(mark.at)}`;
    case 'event': return `${mark.name}, ${tenths(mark.at)}`;
    default: return 'words';
  }
}

// --- From one phase to the next. ---

function start(time) {
  record = Object.assign(fresh(), { phase: 'watching', fixture: $('fixture').value });
  origin = time;
  met = false;
  fastSaid = false;
  sureUntil = -Infinity;
  keepAwake();
  draw();
  $('lamp').focus({ preventScroll: true });
  say('Watching. Hold the large area or the space bar while the lamp is lit.');
}

function stop(time, left) {
  // A lamp that is still held when the person stops was lit to the end.
  releaseAll(time, !left);
  const times = record.marks.map((mark) => mark.off || mark.on || mark.at || 0);
  record.end = Math.max(since(time), ...times);
  record.phase = 'stopped';
  record.left = left;
  if (wake) {
    wake.release().catch(() => {});
    wake = null;
  }
  draw();
  $('result-title').focus();
  scrollTo(0, 0);
}

function askToStop(time) {
  const missing = missingSeconds(since(time));
  if (missing > 0 && !(performance.now() < sureUntil)) {
    sureUntil = performance.now() + 5000;
    say(`${missing} seconds are missing. Press stop again to stop all the same.`);
    tick();
  } else {
    stop(time, false);
  }
}

function startOver() {
  record = fresh();
  $('ask').close();
  draw();
  $('ready').querySelector('h1').focus();
  scrollTo(0, 0);
}

async function keepAwake() {
  try {
    const lock = await navigator.wakeLock.request('screen');
    if (watching()) {
      wake = lock;
    } else {
      lock.release();
    }
  } catch (e) {
    // Not every browser can; the screen then needs a touch now and then.
  }
}
