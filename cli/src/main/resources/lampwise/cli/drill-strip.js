// --- Strips of what was watched. ---

const STRIP_WIDTH = 640;
const LEFT = 2;
const LEAST_PIXELS = 2.5;

function drawn(parent, name, attributes, text) {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) {
    element.setAttribute(key, value);
  }
  if (text !== undefined) {
    element.textContent = text;
  }
  parent.appendChild(element);
  return element;
}

// Times at which a hand was there or the power was off.
function spansOf(acts, begin, end, to) {
  const spans = [];
  let from = null;
  for (const { kind, at } of acts) {
    if (kind === begin && from === null) {
      from = at;
    } else if (kind === end && from !== null) {
      spans.push([from, at]);
      from = null;
    }
  }
  return from === null ? spans : spans.concat([[from, to]]);
}

/*
 * One row of a strip: marks for what was done above the base line, the light on it, taps below.
 * Light is a bar; one that was missed is hollow; a tap is a stroke, one without a light a cross.
 */
function stripRow(seen, from, to, title, width) {
  const wide = width || STRIP_WIDTH;
  const svg = drawn(document.createElement('div'), 'svg', {
    class: 'seen', viewBox: `0 0 ${wide} ${seen.taps ? 88 : 70}`, role: 'img' });
  drawn(svg, 'title', {}, title);
  const scale = (wide - 2 * LEFT) / (to - from);
  const x = (t) => LEFT + (Math.min(to, Math.max(from, t)) - from) * scale;
  const inside = ([a, b]) => Math.min(b, to) > Math.max(a, from);
  const base = 52;
  drawn(svg, 'path', { class: 'base', d: `M${LEFT} ${base}H${x(Math.min(to, seen.end))}` });
  for (const [a, b] of seen.lapses.filter(inside)) {
    drawn(svg, 'path', { class: 'lapsed', d: `M${x(a)} 22H${x(b)}` });
  }
  // What was done, in order of time, each word clear of the one before it.
  const spans = [].concat(seen.lapses.map((s) => [s, '×10']), seen.hands.map((s) => [s, 'hand']),
    seen.offs.map((s) => [s, 'no power']), seen.presses.map((t) => [[t, t + 0.2], 'button']));
  let nextX = LEFT;
  for (const [[a, b], word] of spans.filter(([s]) => inside(s)).sort((one, two) => one[0][0] - two[0][0])) {
    if (word !== '×10') {
      drawn(svg, 'path', { class: 'span', d: `M${x(a)} 20V15H${x(b)}V20` });
    }
    if (a >= from) {
      const at = Math.max(Math.min(x(a), wide - 8 * word.length), nextX);
      drawn(svg, 'text', { x: at, y: 11 }, word);
      nextX = at + 8 * word.length + 6;
    }
  }
  for (const [on, off] of seen.blinks.filter(inside)) {
    const missed = seen.missed.has(on) && on >= from;
    drawn(svg, 'rect', { class: missed ? 'missed' : 'light', x: x(on), y: missed ? 25 : 24,
      width: Math.max(missed ? 4 : LEAST_PIXELS, x(off) - x(on)), height: base - 24 - (missed ? 1 : 0) });
  }
  for (const tap of (seen.taps || []).filter((t) => t >= from && t < to)) {
    if (seen.extra.has(tap)) {
      drawn(svg, 'path', { class: 'extra', d: `M${x(tap) - 4} 57l8 9m0 -9l-8 9` });
    } else {
      drawn(svg, 'path', { class: 'tap', d: `M${x(tap)} 56v11` });
    }
  }
  const low = seen.taps ? 84 : 67;
  drawn(svg, 'text', { x: LEFT, y: low }, `${Math.round(from)} s`);
  drawn(svg, 'text', { x: wide - LEFT, y: low, 'text-anchor': 'end' }, `${Math.round(to)} s`);
  return svg;
}

// Everything that was watched, as rows of at most half a minute; the longest watch has wider rows.
function watchedStrip(parent, seen) {
  parent.replaceChildren();
  const wide = parent.clientWidth >= 560 ? STRIP_WIDTH : 340;
  const least = wide === STRIP_WIDTH ? 30 : 15;
  const row = Math.max(least, Math.ceil(seen.end / 12 / 5) * 5);
  for (let from = 0; from === 0 || from < seen.end - 0.05; from += row) {
    parent.appendChild(stripRow(seen, from, from + row,
      `The lamp from ${from} to ${from + row} s`, wide));
  }
}
