// --- What is shown. ---

const neededSeconds = () => (sheet ? sheet.watchSeconds : LEAST_SECONDS);
const missingSeconds = (ms) => Math.max(0, Math.ceil(neededSeconds() - ms / 1000));

function advice(ms) {
  const hands = handsOf(record);
  const last = hands[hands.length - 1];
  if (last) {
    const left = Math.ceil((last.present ? HAND_IN_SECONDS : HAND_OUT_SECONDS) - (ms - last.at) / 1000);
    if (last.present) {
      return left > 0 ? `Hand in: hold it there ${left}\u00a0s more.` : 'Now take the hand out.';
    }
    if (left > 0) {
      return `Hand out: watch ${left}\u00a0s more.`;
    }
  }
  const missing = missingSeconds(ms);
  if (missing > 0) {
    return sheet || missing > 15 ? `Keep watching, ${missing}\u00a0s more.`
      : `${missing}\u00a0s more, and three full rounds.`;
  }
  if (last) {
    return 'Enough. You may stop.';
  }
  return (sheet ? 'Enough.' : 'Three rounds?')
    + ` Hand in ${HAND_IN_SECONDS}\u00a0s, then out ${HAND_OUT_SECONDS}\u00a0s.`;
}

function tick() {
  if (!watching()) {
    return;
  }
  const ms = since(performance.now());
  record.end = ms;
  const whole = Math.floor(ms / 1000);
  put($('clock'), Math.floor(whole / 60) + ':' + String(whole % 60).padStart(2, '0'));
  put($('advice'), advice(ms));
  const share = Math.min(1, ms / 1000 / neededSeconds());
  $('bar-fill').style.width = 100 * share + '%';
  $('advice').classList.toggle('met', share === 1);
  $('bar').setAttribute('aria-valuenow', Math.min(whole, neededSeconds()));
  const sure = performance.now() < sureUntil && missingSeconds(ms) > 0;
  $('stop').classList.toggle('sure', sure);
  put($('stop'), sure ? `Stop ${missingSeconds(ms)}\u00a0s early?` : 'Stop');
  if (!met && share === 1) {
    met = true;
    // The eyes are on the lamp, so the hand is told too.
    if (navigator.vibrate) {
      navigator.vibrate(200);
    }
    say('Watched long enough. ' + advice(ms));
  }
  keep();
}

function drawMarks() {
  const blinks = blinksOf(record);
  const words = wordsOf(record);
  const last = record.marks[record.marks.length - 1];
  const hands = handsOf(record);
  const present = hands.length > 0 && hands[hands.length - 1].present;
  const fast = offersWords(record);
  $('lamp').classList.toggle('lit', held !== null);
  $('lamp').classList.toggle('words', Boolean(words));
  put($('lamp-word'), held ? 'Lit' : words ? 'Fast blinks' : 'Hold while lit');
  put($('lamp-count'), words ? 'written in words, no taps needed'
    : blinks.length === 0 ? 'no blink yet'
      : `${count(blinks.length, 'blink')}, last at ${tenths(blinks[blinks.length - 1].on)}`);
  put($('hand'), present ? 'Hand out' : 'Hand in');
  $('hand').classList.toggle('in', present);
  $('marks').classList.toggle('away', fast);
  $('fast').classList.toggle('away', !fast);
  if (fast && !fastSaid && watching()) {
    fastSaid = true;
    say('Too fast to tap. Write fast blinks in words, or film it.');
  }
  for (const button of [$('undo'), $('undo-result')]) {
    button.disabled = !last;
    put(button, last ? 'Undo ' + nameOf(last) : 'Nothing to undo');
  }
  if (record.phase === 'stopped') {
    drawResult();
  }
  keep();
}

function drawResult() {
  const spans = spansOf(record);
  const events = record.marks.filter((mark) => mark.kind === 'event').length;
  const missing = missingSeconds(record.end);
  const seen = wordsOf(record) ? 'fast blinks in words' : count(blinksOf(record).length, 'blink');
  put($('result-title'), `${tenths(record.end)} watched`);
  $('ended').hidden = !record.left;
  put($('ended'), `The page was left, reloaded or the screen went off: the recording ends there, at ${tenths(record.end)}. Nobody could mark anything after it.`);
  put($('sum'), `Marked: ${seen}, ${count(spans.length, 'hand')} in range, ${count(events, 'event')}.`
    + (seen === 'no blinks' ? ' So the recording says that the lamp stayed dark all the time.' : '')
    + (missing > 0 ? ` ${sheet ? 'The sheet asks for' : 'Better are'} ${neededSeconds()}\u00a0s; it may not be enough to decide.` : ''));
  $('fast-result').hidden = !(tooFast(record) && !wordsOf(record));
  $('nobody-line').hidden = spans.length > 0;
  $('nobody').checked = record.nobody;
  $('log').value = logOf(record);
  $('log').rows = Math.min(14, $('log').value.split('\n').length);
}

function draw() {
  for (const phase of ['ready', 'watching', 'stopped']) {
    $({ ready: 'ready', watching: 'watch', stopped: 'result' }[phase]).hidden = record.phase !== phase;
  }
  $('fixture').value = record.fixture;
  $('result-fixture').value = record.fixture;
  clearInterval(ticker);
  if (watching()) {
    ticker = setInterval(tick, 200);
  }
  tick();
  drawMarks();
}

function drawSheet() {
  if (!sheet) {
    return;
  }
  $('sheet-title').hidden = false;
  put($('sheet-title'), (sheet.invented ? 'Invented sheet, for trying only: ' : 'Sheet: ') + sheet.title
    + `. Watch for ${sheet.watchSeconds}\u00a0s.`);
  for (const state of sheet.states) {
    for (const [tag, text] of [['dt', state.rhythm], ['dd', state.means + (state.when ? ` (${state.when})` : '')]]) {
      $('state-list').appendChild(document.createElement(tag)).textContent = text;
    }
  }
  $('states').hidden = false;
  $('bar').hidden = false;
  $('bar').setAttribute('aria-valuemax', sheet.watchSeconds);
}

