// --- What is shown. ---

const plan = JSON.parse($('plan').textContent);
const SCREENS = ['ready', 'warn', 'watch', 'choose', 'explain', 'score'];
const WORTHS = { right: 'Right', guess: 'A lucky guess', early: 'Left open too early', wrong: 'Wrong' };

const tenths = (seconds) => seconds.toFixed(1) + '\u00a0s';
const whole = (seconds) => Math.round(seconds) + '\u00a0s';
const nameOf = (answer) => (answer === 'undecided' ? 'undecided' : plan.states[answer].name);

function screen(name) {
  for (const id of SCREENS) {
    $(id).hidden = id !== name;
  }
  const above = $('invented').hidden ? 0 : $('invented').offsetHeight;
  document.documentElement.style.setProperty('--above', above + 'px');
  const heading = $(name).querySelector('h1');
  if (heading) {
    heading.focus({ preventScroll: true });
  }
  scrollTo(0, 0);
}

function element(tag, text, name) {
  const made = document.createElement(tag);
  made.textContent = text;
  if (name) {
    made.className = name;
  }
  return made;
}

function stateStrip(number) {
  const strip = element('span', '', 'paper');
  strip.appendChild($('strips').querySelectorAll('svg')[number].cloneNode(true));
  return strip;
}

function stateLines(number) {
  const state = plan.states[number];
  return [element('b', state.name), stateStrip(number),
    element('span', state.rhythm + (state.when ? '; only ' + state.when : '')),
    element('span', state.means, 'means')];
}

function drawReady() {
  $('invented').hidden = !plan.invented;
  put($('about'), `${plan.title}. Level ${plan.level}: ${plan.levelSays}. ${count(plan.cases.length, 'case')}, seed ${plan.seed}.`);
  const fast = plan.cases.filter((unit) => unit.fast).length;
  $('fast-note').hidden = fast === 0;
  put($('fast-note'), `${count(fast, 'lamp')} of this drill can flash more than three times a second, which can bring on a seizure in people with photosensitive epilepsy. The page warns before each and starts it only when you say so.`);
  $('motion-note').hidden = !matchMedia('(prefers-reduced-motion: reduce)').matches;
  $('button-note').hidden = !plan.hasButton;
  $('button').hidden = !plan.hasButton;
}

function drawStates(choose) {
  const list = $('states');
  list.replaceChildren();
  plan.states.forEach((state, number) => {
    const button = element('button', '');
    button.type = 'button';
    button.dataset.state = state.name;
    button.append(...stateLines(number));
    button.addEventListener('click', () => choose(number));
    list.appendChild(document.createElement('li')).appendChild(button);
  });
}

function seenOf(play, comparison) {
  return {
    end: play.end,
    blinks: blinksOf(play.unit, play.acts, 0, play.end),
    hands: spansOf(play.acts, 'hand-in', 'hand-out', play.end),
    offs: spansOf(play.acts, 'power-off', 'power-on', play.end),
    presses: play.acts.filter((act) => act.kind === 'button').map((act) => act.at),
    lapses: play.lapses,
    taps: play.taps.length > 0 ? play.taps : null,
    missed: new Set(comparison && !comparison.fast ? comparison.missed : []),
    extra: new Set(comparison && !comparison.fast ? comparison.extra : []),
  };
}

function tappedText(play, comparison) {
  if (!comparison) {
    return '';
  }
  if (comparison.fast) {
    return 'Above four blinks a second nobody can tap along: say “fast blinks”, or film it.';
  }
  const late = comparison.late === null ? ''
    : ` In the middle you were ${tenths(Math.abs(comparison.late))} ${comparison.late < 0 ? 'early' : 'late'}.`;
  return `Since your first tap ${count(comparison.due, 'blink')} came on: you missed ${comparison.missed.length}, and ${count(comparison.extra.length, 'tap')} had no blink.${late}`;
}

function longerText(play) {
  const asked = play.longer.length;
  const rightly = play.longer.filter((needed) => needed).length;
  return asked === 0 ? '' : ` “Watch longer” ${asked === 1 ? 'once' : asked + ' times'}, ${
    rightly === asked ? 'rightly' : rightly === 0 ? 'though it could be told already' : `${rightly} of them rightly`}.`;
}

function drawExplain(play, judged) {
  const asked = play.unit.lights[0];
  put($('verdict'), `${WORTHS[judged.worth]}: ${nameOf(play.answer)}`);
  put($('verdict-says'), judged.says);
  $('verdict-says').hidden = !judged.says;
  const state = plan.states[asked.state];
  $('truth').replaceChildren(element('p', `Case ${play.number} is ${state.name}.`, 'what'));
  const [, strip, rhythm, means] = stateLines(asked.state);
  for (const line of [means, rhythm]) {
    $('truth').appendChild(element('p', line.textContent));
  }
  $('truth').appendChild(strip);
  if (state.says) {
    $('truth').appendChild(element('p', `The label says: ${state.says}.`));
  }
  put($('needed'), `You watched ${whole(play.end)}; ${whole(needSeconds(play.unit))} were needed.${longerText(play)}`);
  put($('needed-why'), play.unit.need.why + clockText(play.unit));
  const comparison = compareTaps(blinksOf(play.unit, play.acts, 0, play.end), play.taps, play.lapses);
  const seen = seenOf(play, comparison);
  watchedStrip($('watched'), seen);
  put($('legend'), (seen.blinks.length > 0 ? 'Bars: the lamp was on.' : 'The lamp was never on.')
    + (seen.taps ? ' Strokes below: your taps. Hollow bar: missed. Cross: a tap without a blink.' : '')
    + (seen.lapses.length > 0 ? ' Dashed: time-lapse.' : ''));
  put($('tapped'), tappedText(play, comparison));
  $('tapped').hidden = !comparison;
}

const needSeconds = (unit) => unit.need.rest + unit.need.after;

function clockText(unit) {
  const percent = Math.abs(unit.clock - 1) * 100;
  return percent < 0.5 || isDark(unit.lights[0]) ? ''
    : ` This unit’s clock runs ${percent.toFixed(0)}\u00a0% ${unit.clock > 1 ? 'slow' : 'fast'}.`;
}

function drawScore(results) {
  const of = (worth) => results.filter((result) => result.worth === worth).length;
  put($('score-title'), `${of('right')} of ${results.length} right`);
  put($('score-says'), `Lucky guesses: ${of('guess')}. Left open too early: ${of('early')}. Wrong: ${of('wrong')}.`);
  const sum = (key) => results.reduce((all, result) => all + result[key], 0);
  put($('score-time'), `You watched ${whole(sum('watched'))} in all; ${whole(sum('needed'))} were needed.`);
  $('rows').replaceChildren(...results.map((result) => {
    const row = document.createElement('tr');
    [['Case', result.number], ['It was', result.was], ['You said', result.said],
      ['Worth', WORTHS[result.worth]], ['Watched', whole(result.watched)], ['Needed', whole(result.needed)]]
      .forEach(([label, text], i) => {
        const cell = element('td', text, i > 3 ? 'number' : '');
        cell.dataset.label = label;
        row.appendChild(cell);
      });
    return row;
  }));
}
