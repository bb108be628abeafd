// --- Fingers and keys. ---

// A button that acts as soon as it is touched (or let go of), also with another finger on the lamp.
// A touch makes no click, which could fall on what the touch uncovers; a mouse's click belongs to
// what was done already; any other click comes from keys or an assistive program, and the key went
// down a little earlier. The space bar is the lamp's again afterwards.
function onTouch(button, act, when) {
  let pointed = false;
  let keyAt = null;
  button.addEventListener('pointerdown', (event) => {
    pointed = event.button === 0;
    if (pointed && when === 'down') {
      act(at(event));
    }
  });
  button.addEventListener('pointerup', (event) => {
    const box = button.getBoundingClientRect();
    const inside = event.clientX >= box.left && event.clientX <= box.right
      && event.clientY >= box.top && event.clientY <= box.bottom;
    const acts = pointed && when === 'up' && inside;
    pointed = pointed && event.pointerType !== 'touch';
    if (acts) {
      act(at(event));
    }
    backToLamp();
  });
  button.addEventListener('pointercancel', () => {
    pointed = false;
  });
  button.addEventListener('touchend', (event) => {
    if (event.cancelable) {
      event.preventDefault();
    }
  });
  button.addEventListener('keydown', (event) => {
    keyAt = event.repeat ? keyAt : at(event);
  });
  button.addEventListener('click', (event) => {
    const done = pointed && event.detail > 0;
    const time = keyAt === null ? at(event) : keyAt;
    pointed = false;
    keyAt = null;
    if (!done) {
      act(time);
    }
    backToLamp();
  });
}

function backToLamp() {
  if (watching()) {
    $('lamp').focus({ preventScroll: true });
  }
}

function listenToLamp() {
  const lamp = $('lamp');
  lamp.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) {
      return;
    }
    event.preventDefault();
    lamp.focus({ preventScroll: true });
    lamp.setPointerCapture(event.pointerId);
    press('pointer ' + event.pointerId, at(event));
  });
  for (const type of ['pointerup', 'pointercancel', 'lostpointercapture']) {
    lamp.addEventListener(type, (event) =>
      release('pointer ' + event.pointerId, at(event), type === 'pointerup'));
  }
  lamp.addEventListener('touchstart', (event) => event.preventDefault(), { passive: false });
  lamp.addEventListener('contextmenu', (event) => event.preventDefault());
  lamp.addEventListener('click', (event) => {
    if (holders.size === 0 && at(event) - releasedAt > 700) {
      press('click', at(event));
      release('click', at(event), false);
    }
  });
  document.addEventListener('keydown', (event) => {
    const onLamp = event.target === lamp;
    const free = onLamp || !event.target.closest('button, input, textarea, summary, dialog');
    const key = event.code === 'Space' || (onLamp && event.key === 'Enter');
    if (watching() && free && key && !event.ctrlKey && !event.altKey && !event.metaKey) {
      event.preventDefault();
      if (!event.repeat) {
        press('key ' + event.code, at(event));
      }
    }
  });
  document.addEventListener('keyup', (event) => {
    if (holders.has('key ' + event.code) || event.target === lamp) {
      event.preventDefault();
      release('key ' + event.code, at(event), true);
    }
  });
}

async function copy() {
  const log = $('log');
  try {
    await navigator.clipboard.writeText(log.value);
  } catch (e) {
    log.focus();
    log.select();
    if (!document.execCommand('copy')) {
      done($('copy'), 'Marked: copy it yourself');
      return;
    }
  }
  done($('copy'), 'Copied');
}

function save() {
  const name = clean(record.fixture).replace(/[^\p{L}\p{N}_-]+/gu, '-').replace(/^-+|-+$/g, '');
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([logOf(record)], { type: 'text/plain' }));
  link.download = (Array.from(name).slice(0, 40).join('') || 'lamp') + '.log';
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  done($('save'), 'Saved');
}

function done(button, text) {
  const word = button.id === 'copy' ? 'Copy' : 'Save';
  button.textContent = text;
  say(text);
  setTimeout(() => put(button, word), 2500);
}

function listen() {
  listenToLamp();
  $('start').addEventListener('click', (event) => start(at(event)));
  onTouch($('stop'), askToStop, 'up');
  onTouch($('undo'), undo, 'down');
  onTouch($('hand'), markHand, 'down');
  for (const button of document.querySelectorAll('[data-event]')) {
    onTouch(button, (time) => markEvent(button.dataset.event, button.textContent, time), 'down');
  }
  onTouch($('fast-words'), writeWords, 'up');
  onTouch($('fast-keep'), () => {
    record.tapsKept = true;
    drawMarks();
  }, 'up');
  $('fast-result-words').addEventListener('click', writeWords);
  $('undo-result').addEventListener('click', undo);
  $('copy').addEventListener('click', copy);
  $('save').addEventListener('click', save);
  $('new').addEventListener('click', () => $('ask').showModal());
  $('ask-no').addEventListener('click', () => $('ask').close());
  $('ask-yes').addEventListener('click', startOver);
  $('nobody').addEventListener('change', () => {
    record.nobody = $('nobody').checked;
    drawMarks();
  });
  for (const field of document.querySelectorAll('.fixture')) {
    field.addEventListener('input', () => {
      record.fixture = field.value;
      drawMarks();
    });
  }
  window.addEventListener('blur', () => releaseAll(performance.now(), false));
  document.addEventListener('visibilitychange', () => {
    if (document.hidden && watching()) {
      stop(performance.now(), true);
    }
  });
  window.addEventListener('pagehide', () => {
    if (watching()) {
      stop(performance.now(), true);
    }
  });
}

restore();
drawSheet();
beginTheme();
listen();
draw();
