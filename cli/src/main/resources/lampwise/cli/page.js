// What every page of ours needs.

const $ = (id) => document.getElementById(id);
const count = (n, noun) => (n === 0 ? 'no' : n) + ' ' + noun + (n === 1 ? '' : 's');

// The moment of an event on the page's clock, which never jumps.
function at(event) {
  const now = performance.now();
  const stamp = event.timeStamp > 1e12 ? event.timeStamp - performance.timeOrigin : event.timeStamp;
  return stamp > now - 2000 && stamp <= now + 1 ? stamp : now;
}

function say(text) {
  $('say').textContent = '';
  $('say').textContent = text;
}

// Leaves alone what already stands there, so that nothing is announced or laid out twice.
function put(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
}

function theme(choice) {
  const dark = choice ? choice === 'dark' : matchMedia('(prefers-color-scheme: dark)').matches;
  if (choice) {
    document.documentElement.dataset.theme = choice;
  }
  for (const button of document.querySelectorAll('.theme')) {
    put(button, dark ? 'Light' : 'Dark');
    button.setAttribute('aria-label', dark ? 'Light colours' : 'Dark colours');
    button.onclick = () => theme(dark ? 'light' : 'dark');
  }
}

function beginTheme() {
  theme();
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () =>
    theme(document.documentElement.dataset.theme));
}
