// --- What can be told from what was watched, and what an answer is worth. ---

const SLACK_SECONDS = 0.3;
const TAP_SECONDS = 0.45;
const TOO_FAST_PER_SECOND = 4;

const overlap = (stretch, to) =>
  Math.max(0, Math.min(to, stretch.to) - Math.max(0, stretch.from));

// From an act to the next one, or to the end of the watch.
function undisturbed(acts, from, end) {
  const next = acts.find((act) => act.at > from + 1e-9);
  return Math.min(end, next ? next.at : Infinity) - from;
}

// How long the lamp could be watched with nobody before it and the power on.
function restSeconds(acts, end) {
  let sum = 0;
  let from = 0;
  let hand = false;
  let power = true;
  for (const { kind, at } of acts.concat([{ kind: 'end', at: end }])) {
    sum += hand || !power ? 0 : at - from;
    from = at;
    hand = kind === 'hand-in' || (kind !== 'hand-out' && hand);
    power = kind === 'power-on' || (kind !== 'power-off' && power);
  }
  return sum;
}

const anyLight = (unit, acts, end) => blinksOf(unit, acts, 0, end).length > 0;

function canBeTold(unit, acts, end) {
  const asked = unit.lights[0];
  const need = unit.need;
  const stretches = stretchesOf(unit, acts).filter((stretch) => stretch.light === asked);
  if (isDark(asked)) {
    if (asked.seen !== 'always') {
      return anyLight(unit, acts, end);
    }
    const done = acts.some((act) => need.tells.includes(act.kind)
      && undisturbed(acts, act.at, end) >= need.after - SLACK_SECONDS);
    return done && restSeconds(acts, end) >= need.rest - SLACK_SECONDS;
  }
  if (need.tells.length === 0) {
    const seen = stretches.reduce((sum, stretch) => sum + overlap(stretch, end), 0);
    return seen >= need.rest - SLACK_SECONDS;
  }
  return stretches.some((stretch) => stretch.start !== null
    && undisturbed(acts, stretch.from, end) >= need.after - SLACK_SECONDS);
}

// The states that the unit was in while it was watched.
function trueStates(unit, acts, end) {
  const stretches = stretchesOf(unit, acts);
  return unit.lights.filter((light, i) => i === 0 || (isDark(light) && light.seen === 'idle')
    || stretches.some((stretch) => stretch.light === light && overlap(stretch, end) > 0
      && (stretch.start === null ? runningBlinks(light, Math.max(0, stretch.from), end)
        : startedBlinks(light, stretch.start, 0, Math.min(end, stretch.to))).length > 0))
    .map((light) => light.state);
}

// Worth: right, guess (right, but it could not be told), early (left open too soon), wrong.
function judge(unit, acts, end, answer) {
  const told = canBeTold(unit, acts, end);
  const need = unit.need;
  const asked = unit.lights[0];
  if (answer === 'undecided') {
    if (told && need.alike.length === 0) {
      return { worth: 'wrong', says: 'What you watched can tell it.' };
    }
    const dark = isDark(asked) && restSeconds(acts, end) >= need.rest - SLACK_SECONDS;
    if (told || dark) {
      return { worth: 'right', says: need.alike.length > 0
        ? 'Nothing that can be done here tells it, so it is right to say so.'
        : 'Dark alone cannot tell it, so it is right to say so. A check would have told it.' };
    }
    return { worth: 'early', says: 'It could not be told yet. Watching longer, or doing something, would have told it.' };
  }
  if (answer === asked.state) {
    if (told && need.alike.length === 0) {
      return { worth: 'right', says: '' };
    }
    return { worth: 'guess', says: need.alike.length > 0
      ? 'So it is, but nothing that can be done here tells it from what looks the same.'
      : 'So it is, but what you watched could not tell it yet.' };
  }
  if (trueStates(unit, acts, end).includes(answer)) {
    return anyLight(unit, acts, end)
      ? { worth: 'right', says: 'The unit was in that state too while you watched.' }
      : { worth: 'guess', says: 'So it was, but what you watched could not tell it yet.' };
  }
  return { worth: 'wrong', says: told ? '' : 'What you watched could not tell it yet.' };
}

// Taps against blinks: each tap serves the nearest free blink. Nobody taps in a time-lapse, so
// nothing is missed there, nor before the first tap.
function compareTaps(blinks, taps, lapses) {
  if (taps.length === 0) {
    return null;
  }
  const inLapse = (t) => lapses.some(([from, to]) => t >= from - TAP_SECONDS && t < to + TAP_SECONDS);
  const due = blinks.map(([on]) => on)
    .filter((on) => on > 0 && on >= taps[0] - TAP_SECONDS && !inLapse(on));
  const fast = due.some((on, i) => i >= TOO_FAST_PER_SECOND
    && on - due[i - TOO_FAST_PER_SECOND] < 1);
  const pairs = [];
  due.forEach((on, i) => taps.forEach((tap, j) => {
    if (Math.abs(tap - on) <= TAP_SECONDS) {
      pairs.push([Math.abs(tap - on), i, j]);
    }
  }));
  pairs.sort((a, b) => a[0] - b[0]);
  const hitBlinks = new Set();
  const hitTaps = new Set();
  const late = [];
  for (const [, i, j] of pairs) {
    if (!hitBlinks.has(i) && !hitTaps.has(j)) {
      hitBlinks.add(i);
      hitTaps.add(j);
      late.push(taps[j] - due[i]);
    }
  }
  late.sort((a, b) => a - b);
  return {
    due: due.length,
    fast,
    missed: due.filter((on, i) => !hitBlinks.has(i)),
    extra: taps.filter((tap, j) => !hitTaps.has(j)),
    late: late.length > 0 ? late[Math.floor(late.length / 2)] : null,
  };
}
