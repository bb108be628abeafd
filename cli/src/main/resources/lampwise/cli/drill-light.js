// --- The lamp. Times are seconds from the start of the watch; nothing in it hangs on the page. ---

const OF_BUTTON = ['while-running', 'after-flush', 'after-button'];

const endless = (seconds) => (seconds === null ? Infinity : seconds);

function addBlink(blinks, on, off, from, to) {
  if (Math.min(off, to) > Math.max(on, from)) {
    blinks.push([Math.max(on, from), Math.min(off, to)]);
  }
}

function addPulses(blinks, pulses, start, from, to) {
  for (const [on, length] of pulses) {
    addBlink(blinks, start + on, start + on + endless(length), from, to);
  }
}

function addCycles(blinks, light, start, from, to) {
  let at = start;
  do {
    addPulses(blinks, light.cycle, at, from, to);
    at += endless(light.cycleSeconds);
  } while (light.repeats && light.cycle.length > 0 && at < to);
}

// A lamp that has long been running.
function runningBlinks(light, from, to) {
  const blinks = [];
  if (light.cycleSeconds === null) {
    const on = light.cycle.some(([, length]) => length === null);
    addBlink(blinks, on ? from : to, to, from, to);
  } else {
    const first = Math.floor((from + light.phase) / light.cycleSeconds) - 1;
    addCycles(blinks, light, first * light.cycleSeconds - light.phase, from, to);
  }
  return blinks;
}

// A lamp that begins its prelude, or cycle, at a moment.
function startedBlinks(light, start, from, to) {
  const blinks = [];
  addPulses(blinks, light.prelude, start, from, to);
  addCycles(blinks, light, start + light.preludeSeconds, from, to);
  return blinks;
}

function onceSeconds(light) {
  const ends = light.prelude.map(([on, length]) => on + length)
    .concat(light.cycle.map(([on, length]) => light.preludeSeconds + on + endless(length)));
  return Math.max(0, ...ends);
}

const isDark = (light) => light.prelude.length === 0 && light.cycle.length === 0;
const lightOf = (unit, seen) => unit.lights.find((light) => light.seen === seen);

// What the lamp shows without anything done to the unit.
function byItself(unit, hand, power) {
  const light = lightOf(unit, 'always') || lightOf(unit, hand ? 'target' : 'idle');
  return power && light && light.repeats ? light : null;
}

function ofButton(unit) {
  const asked = unit.lights[0];
  if (asked.seen === 'set-up' || OF_BUTTON.includes(asked.seen)) {
    return asked;
  }
  return OF_BUTTON.map((seen) => lightOf(unit, seen)).find(Boolean);
}

// What is shown anew because something was done.
function following(unit, kind, hand) {
  const own = {
    'hand-in': () => lightOf(unit, 'target'),
    'hand-out': () => lightOf(unit, 'after-target'),
    'power-on': () => lightOf(unit, 'after-power-up'),
    button: () => ofButton(unit),
    'power-off': () => null,
  }[kind]();
  const any = lightOf(unit, 'always') || (hand ? null : lightOf(unit, 'idle'));
  return own || (any && !any.repeats ? any : null);
}

// Stretches in which nothing is done; start is null for a lamp that runs on by itself.
function stretchesOf(unit, acts) {
  let hand = false;
  let power = true;
  let stretches = [{ from: -Infinity, light: byItself(unit, false, true), start: null }];
  for (const { kind, at } of acts) {
    hand = kind === 'hand-in' || (kind !== 'hand-out' && hand);
    power = kind === 'power-on' || (kind !== 'power-off' && power);
    const next = power ? following(unit, kind, hand) : null;
    stretches = stretches.filter((stretch) => stretch.from < at);
    if (next) {
      const start = at + next.delay;
      stretches.push({ from: at, light: next, start });
      if (!next.repeats) {
        const end = start + onceSeconds(next);
        stretches.push({ from: end, light: byItself(unit, hand, true), start: null });
      }
    } else {
      stretches.push({ from: at, light: byItself(unit, hand, power), start: null });
    }
  }
  return stretches.map((stretch, i) =>
    Object.assign(stretch, { to: i + 1 < stretches.length ? stretches[i + 1].from : Infinity }));
}

function blinksOf(unit, acts, from, to) {
  return stretchesOf(unit, acts).flatMap((stretch) => {
    const begin = Math.max(from, stretch.from);
    const end = Math.min(to, stretch.to);
    if (!stretch.light || !(end > begin)) {
      return [];
    }
    return stretch.start === null ? runningBlinks(stretch.light, begin, end)
      : startedBlinks(stretch.light, stretch.start, begin, end);
  });
}
