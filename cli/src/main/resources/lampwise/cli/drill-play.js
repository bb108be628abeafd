// --- Playing one case after another. ---

const WAIT_SECONDS = 10;
const LAPSE_SPEED = 10;
const OFF_SECONDS = 3;
const AHEAD_SECONDS = 30;
const LIVE_SECONDS = 15;

let order = plan.cases.map((unit, i) => i);
let place = 0;
let results = [];
let play = null;
let asStrip = false;
let frame = 0;
let cache = { to: -1, blinks: [] };
let liveDrawn = -Infinity;

function fresh(unit, number) {
  return { unit, number, acts: [], taps: [], lapses: [], longer: [], end: 0, answer: null,
    running: false, base: 0, since: 0, speed: 1, lapseTo: null, onAt: null };
}

const timeOf = (now) => play.base + (play.running ? Math.max(0, now - play.since) / 1000 * play.speed : 0);

function setRunning(running, now, speed) {
  play.base = timeOf(now);
  play.since = now;
  play.running = running;
  play.speed = speed || play.speed;
}

function act(kind, seconds) {
  play.acts.push({ kind, at: seconds });
  cache.to = -1;
}

const has = (begin, end) => play.acts.filter((a) => a.kind === begin).length
  > play.acts.filter((a) => a.kind === end).length;

function isLit(t) {
  if (t > cache.to) {
    cache = { to: t + AHEAD_SECONDS, blinks: blinksOf(play.unit, play.acts, Math.max(0, t - 1), t + AHEAD_SECONDS) };
  }
  return cache.blinks.some(([on, off]) => t >= on && t < off);
}

// What happens by itself at its time, however late the page is.
function settle(now) {
  if (play.lapseTo !== null && timeOf(now) >= play.lapseTo) {
    const over = now - (play.since + (play.lapseTo - play.base) / LAPSE_SPEED * 1000);
    play.lapses[play.lapses.length - 1][1] = play.lapseTo;
    play.base = play.lapseTo;
    play.since = now - over;
    play.speed = 1;
    play.lapseTo = null;
    $('lamp').focus({ preventScroll: true });
  }
  if (play.onAt !== null && timeOf(now) >= play.onAt) {
    act('power-on', play.onAt);
    play.onAt = null;
    say('The power is on again.');
  }
}

function tick() {
  cancelAnimationFrame(frame);
  if ($('watch').hidden || !play.running) {
    return;
  }
  const now = performance.now();
  settle(now);
  const t = timeOf(now);
  const lapsing = play.lapseTo !== null;
  const covered = asStrip || lapsing;
  $('lamp').classList.toggle('lit', !covered && isLit(t));
  $('lamp').classList.toggle('covered', covered);
  $('lapse').hidden = !covered;
  put($('lapse'), lapsing ? 'Time-lapse ×10' : 'Shown as a strip');
  $('live').hidden = !covered;
  put($('clock'), Math.floor(t / 60) + ':' + String(Math.floor(t % 60)).padStart(2, '0'));
  drawControls();
  if (covered) {
    drawLive(now, t);
  }
  frame = requestAnimationFrame(tick);
}

function drawControls() {
  const hand = has('hand-in', 'hand-out');
  const off = has('power-off', 'power-on');
  put($('hand'), hand ? 'Hand out' : 'Hand in');
  $('hand').classList.toggle('on', hand);
  put($('power'), off ? 'Power is off' : 'Power off and on');
  const lapsing = play.lapseTo !== null;
  $('power').disabled = off || lapsing;
  for (const id of ['hand', 'button', 'wait', 'answer']) {
    $(id).disabled = lapsing;
  }
  $('strip').setAttribute('aria-pressed', String(asStrip));
  put($('strip'), asStrip ? 'Show the lamp' : 'Show as strip');
  put($('circumstances'), [hand ? 'hand before the sensor' : '', off ? 'power off' : ''].filter(Boolean).join(', '));
  put($('taps'), play.taps.length === 0 ? 'tap along, if you like' : count(play.taps.length, 'tap'));
}

// The last seconds as a strip, in steps that do not flash.
function drawLive(now, t) {
  const step = matchMedia('(prefers-reduced-motion: reduce)').matches ? 1000 : 250;
  if (now - liveDrawn >= step || now < liveDrawn) {
    liveDrawn = now;
    const from = Math.max(0, t - LIVE_SECONDS);
    const seen = Object.assign(seenOf(Object.assign({}, play, { end: t }), null), { taps: null });
    $('live').replaceChildren(stripRow(seen, from, from + LIVE_SECONDS, 'The lamp in the last seconds',
      $('live').clientWidth >= 560 ? STRIP_WIDTH : 340));
  }
}

function begin() {
  const unit = plan.cases[order[place]];
  play = fresh(unit, place + 1);
  put($('warn-title'), `Case ${play.number} of ${order.length}`);
  if (unit.fast && !asStrip) {
    screen('warn');
  } else {
    watch();
  }
}

function watch() {
  cache.to = -1;
  liveDrawn = -Infinity;
  put($('case'), `Case ${play.number} of ${order.length}`);
  screen('watch');
  setRunning(!document.hidden, performance.now());
  $('lamp').focus({ preventScroll: true });
  tick();
}

function tap(now) {
  settle(now);
  if (play.running && play.lapseTo === null) {
    play.taps.push(timeOf(now));
    drawControls();
  }
}

function moveHand(now) {
  settle(now);
  const there = has('hand-in', 'hand-out');
  act(there ? 'hand-out' : 'hand-in', timeOf(now));
  say(there ? 'Hand out.' : 'Hand in.');
}

function powerOff(now) {
  settle(now);
  act('power-off', timeOf(now));
  play.onAt = timeOf(now) + OFF_SECONDS;
  say('The power is off.');
}

function press(now) {
  settle(now);
  act('button', timeOf(now));
  say('Button pressed.');
}

function wait(now) {
  settle(now);
  const from = timeOf(now);
  setRunning(true, now, LAPSE_SPEED);
  play.lapseTo = from + WAIT_SECONDS;
  play.lapses.push([from, play.lapseTo]);
  liveDrawn = -Infinity;
  say('Time-lapse, ten seconds.');
}

function choose(now) {
  settle(now);
  setRunning(false, now);
  play.end = play.base;
  put($('choose-note'), `You watched ${whole(play.end)}. The clock stands still while you choose.`);
  put($('choose-title'), `Case ${play.number}: what does the lamp say?`);
  screen('choose');
}

function longer() {
  play.longer.push(!canBeTold(play.unit, play.acts, play.end) || play.unit.need.alike.length > 0);
  watch();
}

function answer(said) {
  play.answer = said;
  const judged = judge(play.unit, play.acts, play.end, said);
  results.push({ number: play.number, was: plan.states[play.unit.lights[0].state].name, said: nameOf(said),
    worth: judged.worth, watched: play.end, needed: needSeconds(play.unit) });
  put($('next'), place + 1 < order.length ? 'Next case' : 'Score');
  screen('explain');
  drawExplain(play, judged);
}

function next() {
  place++;
  if (place < order.length) {
    begin();
  } else {
    drawScore(results);
    screen('score');
  }
}

// Another order comes from the number of the round, so that a class can play the same.
function again() {
  order = order.map((unit, i) => order[(i * step(order.length) + 1) % order.length]);
  place = 0;
  results = [];
  screen('ready');
}

// The least number over two that shares no factor with the number of cases.
function step(cases) {
  const factor = (a, b) => (b === 0 ? a : factor(b, a % b));
  let found = 3;
  while (factor(found, cases) !== 1) {
    found++;
  }
  return found;
}

function show(strip) {
  asStrip = strip;
  $('ready-strip').checked = strip;
  liveDrawn = -Infinity;
}

function listen() {
  $('start').addEventListener('click', begin);
  $('ready-strip').addEventListener('change', () => show($('ready-strip').checked));
  $('warn-strip').addEventListener('click', () => {
    show(true);
    watch();
  });
  $('warn-lamp').addEventListener('click', watch);
  const lamp = $('lamp');
  lamp.addEventListener('pointerdown', (event) => {
    if (event.button === 0) {
      event.preventDefault();
      lamp.focus({ preventScroll: true });
      tap(at(event));
    }
  });
  lamp.addEventListener('touchstart', (event) => event.preventDefault(), { passive: false });
  // A click without a pointer comes from an assistive program.
  lamp.addEventListener('click', (event) => {
    if (event.detail === 0) {
      tap(at(event));
    }
  });
  lamp.addEventListener('contextmenu', (event) => event.preventDefault());
  document.addEventListener('keydown', (event) => {
    const free = event.target === lamp || !event.target.closest('button, input');
    const key = event.code === 'Space' || (event.target === lamp && event.key === 'Enter');
    if (!$('watch').hidden && free && key && !event.ctrlKey && !event.altKey && !event.metaKey) {
      event.preventDefault();
      if (!event.repeat) {
        tap(at(event));
      }
    }
  });
  for (const [id, doing] of [['hand', moveHand], ['power', powerOff], ['button', press], ['wait', wait]]) {
    $(id).addEventListener('click', (event) => {
      doing(at(event));
      drawControls();
      lamp.focus({ preventScroll: true });
    });
  }
  $('strip').addEventListener('click', () => {
    // A lamp that flashes fast is not uncovered without the warning.
    if (asStrip && play.unit.fast) {
      setRunning(false, performance.now());
      show(false);
      screen('warn');
    } else {
      show(!asStrip);
    }
  });
  $('answer').addEventListener('click', (event) => choose(at(event)));
  $('longer').addEventListener('click', longer);
  $('undecided').addEventListener('click', () => answer('undecided'));
  $('next').addEventListener('click', next);
  $('again').addEventListener('click', again);
  document.addEventListener('visibilitychange', () => {
    if (play && !$('watch').hidden) {
      settle(performance.now());
      setRunning(!document.hidden, performance.now());
      tick();
    }
  });
}

drawReady();
drawStates(answer);
beginTheme();
listen();
screen('ready');
