(() => {
  'use strict';
  const at = id => document.getElementById(id);
  const STALE_MS = 1000;
  let about = null;
  let unit = '';
  let lastFrame = performance.now();
  let source = null;
  let knownFaults = -1;
  let shownQuestion = '';
  let opened = 0;

  function say(id, text) {
    const node = at(id);
    if (node.textContent !== text) node.textContent = text;
  }

  function shown(value, what) {
    return value == null ? '–' : value + (what ? ' ' + what : '');
  }

  function item(list, build) {
    const li = document.createElement('li');
    build(li);
    list.append(li);
    return li;
  }

  function piece(parent, tag, className, text) {
    const node = document.createElement(tag);
    if (className) node.className = className;
    node.textContent = text;
    parent.append(node);
    return node;
  }

  // Rebuilt only when it changed, so that a reader or a screen reader is left in peace.
  function rebuilt(id, key, build) {
    const node = at(id);
    const text = JSON.stringify(key);
    if (node.dataset.key === text) return;
    node.dataset.key = text;
    node.replaceChildren();
    build(node);
  }

  function place(id, value, low, high) {
    const node = at(id);
    node.hidden = value == null;
    if (value != null) {
      const share = Math.max(0, Math.min(1, (value - low) / (high - low)));
      if (id === 'map-fill') node.style.width = share * 100 + '%';
      else node.style.left = share * 100 + '%';
    }
  }

  function faults(node, list) {
    if (list.length === 0) item(node, li => ((li.className = 'soft'), (li.textContent = 'None.')));
    for (const fault of list) {
      item(node, li => {
        piece(li, 'strong', '', fault.text);
        piece(li, 'span', 'next', 'Look at: ' + fault.next);
        if (fault.order) {
          piece(li, 'span', 'next', 'In this order: ' + fault.order + '.');
          piece(li, 'span', 'next', 'Driving on: ' + fault.onwards + '.');
        }
        piece(li, 'span', 'next', 'Meanwhile: ' + fault.does + '. Clears ' + fault.clears + '.');
      });
    }
  }

  function frame(f) {
    lastFrame = performance.now();
    document.body.classList.toggle('stale', !f.ticking);
    if (!f.ticking) {
      say('state', 'nothing ticks');
      say('why', 'The control loop is not running.');
      at('head').className = 'tone-fault';
      return;
    }
    say('state', f.state);
    say('why', f.why);
    at('head').className = 'tone-' + f.tone;
    say('map', shown(f.map));
    say('target', shown(f.target));
    say('margin', shown(f.margin, about ? about.difference : ''));
    say('duty', shown(f.duty, '%'));
    say('parts', f.parts);
    say('tables', f.tables);
    say('rpm', shown(f.rpm, 'rpm'));
    say('throttle', shown(f.throttle, '%'));
    say('gear', f.gear > 0 ? String(f.gear) : 'unknown');
    say('air', shown(f.air, '°C'));
    say('ambient', shown(f.ambient, unit));
    say('limit', shown(f.limit, unit));
    const low = Math.min(0, f.map == null ? 0 : f.map);
    const high = f.limit * 1.1;
    place('map-fill', f.map, low, high);
    place('target-tick', f.target, low, high);
    place('limit-tick', f.limit, low, high);
    rebuilt('active', f.active.map(x => x.id), node => faults(node, f.active));
    say('count', String(f.faults));
    if (f.faults !== knownFaults) {
      knownFaults = f.faults;
      history();
    }
    rebuilt('sensors', f.sensors, node => {
      for (const s of f.sensors) {
        item(node, li => {
          piece(li, 'span', '', s.name);
          piece(li, 'span', s.good ? 'good' : 'bad', s.status);
          piece(li, 'span', '', s.good ? s.value : shown(s.volts, 'V'));
        });
      }
    });
    rebuilt('switches', f.switches, node => {
      for (const s of f.switches) {
        item(node, li => {
          piece(li, 'span', '', s.name);
          piece(li, 'span', '', s.is);
        });
      }
    });
    driver(f);
    rebuilt('health', f.health, node => f.health.forEach(h => piece(node, 'li', '', h)));
    bench(f);
  }

  function driver(f) {
    at('driver').hidden = f.guest === '';
    say(
      'driver-words',
      f.guest === 'guest'
        ? 'A guest: low boost, whatever the selector says.'
        : 'The owner: the selector decides.');
    const open = about && about.unlocked && f.stopped;
    at('driver-change').hidden = !open;
    at('driver-guest').hidden = f.guest === 'guest';
    at('driver-owner').hidden = f.guest === 'owner';
    if (!open) say('driver-said', 'Changed with the engine stopped and the token given.');
  }

  function bench(f) {
    if (!about) return;
    const b = f.bench;
    const closed = !about.can_unlock
      ? 'Start drive with --page-token-file to use the bench from here.'
      : !about.unlocked
        ? 'The token opens the bench and the recordings.'
        : !f.stopped && !b.busy
          ? 'Only with the engine stopped.'
          : '';
    say('bench-closed', closed);
    at('unlock').hidden = !about.can_unlock || about.unlocked;
    at('bench-open').hidden = closed !== '' || b.busy;
    at('bench-run').hidden = !b.busy;
    at('stop').hidden = !about.unlocked;
    at('begin').disabled = !at('safe').checked;
    say('bench-step', b.step);
    const q = b.question;
    say('bench-question', q ? q.words : b.busy ? 'Working. Keep clear.' : '');
    const key = q && about.unlocked ? q.id : '';
    if (key !== shownQuestion) {
      shownQuestion = key;
      at('bench-answer').replaceChildren();
      if (key) answerForm(at('bench-answer'), q);
    }
    at('bench-ended').hidden = !b.ended;
    if (b.ended) {
      say('ended-words', b.ended.words + (b.ended.window ? ' ' + b.ended.window + '.' : ''));
      rebuilt('ended-found', b.ended.found, node => {
        for (const found of b.ended.found) {
          item(node, li => {
            piece(li, 'strong', '', found.text);
            piece(li, 'span', 'next', 'Next: ' + found.next);
          });
        }
      });
      say('ended-proof', 'The proof the ladder asks for is kept by the bench command.');
    }
  }

  function answerForm(node, q) {
    const choices = {
      done: [['done', 'Done']],
      yes_no: [['yes', 'Yes'], ['no', 'No']],
      heard: [
        ['nothing', 'Nothing'],
        ['puff', 'A puff each time it went on'],
        ['on', 'Steady while on'],
        ['off', 'Steady while off'],
      ],
    }[q.form];
    const give = value => post('/api/bench', { action: 'answer', question: q.id, value });
    if (choices) {
      for (const [value, label] of choices) {
        piece(node, 'button', '', label).addEventListener('click', () => give(value));
      }
    } else {
      const form = document.createElement('form');
      const label = piece(form, 'label', '', q.answer + ' ');
      label.htmlFor = 'answer';
      const input = piece(form, 'input', '', '');
      input.id = 'answer';
      input.type = 'text';
      input.maxLength = 20;
      input.autocomplete = 'off';
      if (q.form === 'gauge') input.placeholder = '12 psi';
      piece(form, 'button', '', 'Give').type = 'submit';
      form.addEventListener('submit', event => {
        event.preventDefault();
        give(input.value);
      });
      node.append(form);
    }
    if (q.form !== 'done') {
      piece(node, 'button', '', 'I do not know').addEventListener('click', () => give('unknown'));
    }
  }

  async function history() {
    const answer = await get('/api/faults');
    if (!answer) return;
    const node = at('history');
    const open = new Set(
      [...node.querySelectorAll('details[open]')].map(d => d.dataset.number));
    node.replaceChildren();
    for (const f of answer.faults) {
      const box = document.createElement('details');
      box.dataset.number = f.number;
      box.open = open.has(String(f.number));
      piece(box, 'summary', '', f.fault.text + ' ' + shown(f.ago, 's ago'));
      const table = document.createElement('table');
      for (const cell of f.frame) {
        const row = document.createElement('tr');
        piece(row, 'td', '', cell.name);
        piece(row, 'td', '', cell.value);
        table.append(row);
      }
      box.append(table);
      node.append(box);
    }
  }

  async function recordings() {
    const answer = await get('/api/recordings');
    const node = at('recordings');
    node.replaceChildren();
    if (!answer || answer.recordings.length === 0) {
      piece(node, 'li', 'soft', 'There are none.');
      return;
    }
    for (const r of answer.recordings) {
      const size = (r.bytes / 1e6).toFixed(1) + ' MB';
      item(node, li => {
        if (about.unlocked) {
          const link = piece(li, 'a', '', r.name);
          link.href = '/api/recording/' + encodeURIComponent(r.name);
          link.download = r.name;
        } else {
          piece(li, 'span', '', r.name);
        }
        piece(li, 'span', 'soft', ' ' + size + (about.unlocked ? '' : ', needs the token'));
      });
    }
  }

  async function get(path) {
    try {
      const answer = await fetch(path);
      return answer.ok ? await answer.json() : null;
    } catch (e) {
      return null;
    }
  }

  async function post(path, fields, words = 'bench-said') {
    try {
      const answer = await fetch(path, {
        method: 'POST',
        headers: { 'X-Boostwright': '1', 'Content-Type': 'application/x-www-form-urlencoded' },
        body: new URLSearchParams(fields),
      });
      say(words, await answer.text());
      if (answer.status === 401) await load();
      return answer.ok;
    } catch (e) {
      say(words, 'The controller did not answer.');
      return false;
    }
  }

  async function load() {
    const answer = await get('/api/about');
    if (!answer) return;
    about = answer;
    unit = about.unit;
    say('unit', unit);
    say('version', about.version);
    say('digest', about.digest.slice(0, 16));
    say('proof', 'Proof: ' + about.proof + '.');
    say('allowed', about.allowed + ' Wires: ' + about.wires + '.');
    say('settings', about.settings);
    rebuilt('steps', about.steps, node => {
      piece(node, 'legend', '', 'Procedures');
      for (const step of about.steps) {
        const label = piece(node, 'label', 'tickbox', '');
        const box = document.createElement('input');
        box.type = 'checkbox';
        box.value = step.id;
        box.checked = step.usual;
        label.append(box, step.id + ': ' + step.words);
      }
    });
    if (at('recordings-box').open) recordings();
  }

  function connect() {
    if (source) source.close();
    opened = performance.now();
    source = new EventSource('/api/events');
    source.onopen = load;
    source.onmessage = event => frame(JSON.parse(event.data));
  }

  at('unlock').addEventListener('submit', async event => {
    event.preventDefault();
    const token = at('token').value;
    at('token').value = '';
    await post('/api/unlock', { token });
    await load();
  });
  at('begin').addEventListener('click', async () => {
    const steps = [...document.querySelectorAll('#steps input:checked')].map(box => box.value);
    if (await post('/api/bench', { action: 'begin', steps: steps.join(',') })) {
      at('safe').checked = false;
    }
  });
  at('stop').addEventListener('click', () => post('/api/bench', { action: 'stop' }));
  for (const who of ['guest', 'owner']) {
    at('driver-' + who).addEventListener('click', () =>
      post('/api/driver', { who }, 'driver-said'));
  }
  at('recordings-box').addEventListener('toggle', recordings);

  setInterval(() => {
    const silent = performance.now() - lastFrame;
    if (silent > STALE_MS) {
      document.body.classList.add('stale');
      at('head').className = 'tone-fault';
      say('state', 'no data');
      say('why', 'Nothing heard for ' + Math.round(silent / 1000) + ' s. Do not trust these numbers.');
      at('bench-open').hidden = true;
      if (performance.now() - opened > 2000) connect();
    }
  }, 250);
  connect();
})();
