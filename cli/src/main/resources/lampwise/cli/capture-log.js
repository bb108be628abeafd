// A press of this length and more is a hold, whose end is the lamp's; of a tap only the start is.
const HOLD_MS = 300;
// Five starts within this time are more than four a second.
const FAST_STARTS = 5;
const FAST_MS = 1000;
const LEAST_SECONDS = 30;
const HAND_IN_SECONDS = 5;
const HAND_OUT_SECONDS = 15;
const KEPT = 'lampwise-capture-1';

const plan = JSON.parse($('plan').textContent);
const sheet = plan.sheet;

// --- The recording. Times are milliseconds from its start; nothing in it hangs on the page. ---

function fresh() {
  return { phase: 'ready', fixture: plan.fixture, end: 0, left: false, nobody: false,
    tapsKept: false, marks: [] };
}

const blinksOf = (record) => record.marks.filter((mark) => mark.kind === 'blink');
const handsOf = (record) => record.marks.filter((mark) => mark.kind === 'hand');
const wordsOf = (record) => record.marks.find((mark) => mark.kind === 'saw');
const seconds = (ms) => (ms / 1000).toFixed(3);
const tenths = (ms) => (ms / 1000).toFixed(1) + '\u00a0s';

function spansOf(record) {
  const spans = [];
  for (const hand of handsOf(record)) {
    if (hand.present) {
      spans.push([hand.at, record.end]);
    } else {
      spans[spans.length - 1][1] = hand.at;
    }
  }
  return spans.filter(([from, to]) => seconds(from) !== seconds(to));
}

function tooFast(record) {
  const blinks = blinksOf(record);
  return blinks.some((blink, i) => i >= FAST_STARTS - 1
    && blink.on - blinks[i - FAST_STARTS + 1].on < FAST_MS);
}

const offersWords = (record) => tooFast(record) && !record.tapsKept && !wordsOf(record);

// One line, no control characters, at most 80 characters.
function clean(name) {
  const line = name.replace(/[\p{Cc}\p{Cs}\s]+/gu, ' ').trim();
  return Array.from(line).slice(0, 80).join('').trim();
}

function logOf(record) {
  const lines = ['lampwise-log: 1'];
  if (clean(record.fixture)) {
    lines.push('fixture: ' + clean(record.fixture));
  }
  lines.push(`window: ${seconds(0)} to ${seconds(record.end)} s`);
  const spans = spansOf(record);
  for (const [from, to] of spans) {
    lines.push(`target: ${seconds(from)} to ${seconds(to)} s`);
  }
  if (spans.length === 0 && record.nobody) {
    lines.push('target: none');
  }
  for (const mark of record.marks) {
    if (mark.kind === 'event') {
      lines.push(`event: ${mark.name} at ${seconds(mark.at)} s`);
    }
  }
  for (const { on, off } of blinksOf(record)) {
    lines.push('on ' + seconds(on) + (off === null ? '' : ' off ' + seconds(off)));
  }
  const words = wordsOf(record);
  return lines.concat(words ? ['saw: ' + words.phrase] : []).join('\n') + '\n';
}
