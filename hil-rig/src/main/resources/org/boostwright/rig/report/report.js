(() => {
  'use strict';
  const plots = JSON.parse(document.getElementById('plot-data').textContent);
  const DASHES = { solid: [], dashed: [9, 5], dotted: [2, 4], points: [] };
  const AXIS_WIDTH = 58;

  function tone(name) {
    return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  }

  function font(px) {
    return px * devicePixelRatio + 'px ' + getComputedStyle(document.body).fontFamily;
  }

  // Shown beside a value under the cursor: as many decimals as the eye can use.
  function number(value) {
    if (value == null) return '–';
    if (value === 0) return '0';
    const size = Math.abs(value);
    return value.toFixed(size >= 1000 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
  }

  // Axis labels: without the noise of binary fractions.
  function plain(value) {
    return String(+value.toPrecision(8));
  }

  function yRange(panel) {
    return (u, low, high) => {
      if (panel.percent) return [0, Math.max(100, high == null ? 100 : high)];
      for (const limit of panel.limits) {
        low = low == null ? limit.value : Math.min(low, limit.value);
        high = high == null ? limit.value : Math.max(high, limit.value);
      }
      if (low == null) return [0, 1];
      const room = (high - low) * 0.07 || Math.abs(high) * 0.05 || 1;
      return [low - room, high + room];
    };
  }

  function drawBands(u, bands, first) {
    const ctx = u.ctx, box = u.bbox, dpr = devicePixelRatio;
    const kinds = [...new Set(bands.map(b => b.label))];
    ctx.save();
    ctx.font = font(11);
    ctx.textAlign = 'left';
    ctx.textBaseline = 'middle';
    for (const band of bands) {
      const left = Math.max(box.left, u.valToPos(band.from, 'x', true));
      const right = Math.min(box.left + box.width, u.valToPos(band.to, 'x', true));
      if (!(right > left)) continue;
      const even = kinds.indexOf(band.label) % 2 === 0;
      if (first) {
        const height = 17 * dpr, top = box.top - height - 3 * dpr;
        ctx.fillStyle = tone(even ? '--band-a' : '--band-b');
        ctx.fillRect(left, top, right - left, height);
        if (ctx.measureText(band.label).width + 8 * dpr < right - left) {
          ctx.fillStyle = tone('--ink');
          ctx.fillText(band.label, left + 4 * dpr, top + height / 2);
        }
      }
      // Where states change often the lines would hide the curves.
      if (left > box.left && right - left > 10 * dpr) {
        ctx.strokeStyle = tone('--soft');
        ctx.lineWidth = dpr;
        ctx.setLineDash([dpr, 3 * dpr]);
        ctx.beginPath();
        ctx.moveTo(left, first ? box.top - 20 * dpr : box.top);
        ctx.lineTo(left, box.top + box.height);
        ctx.stroke();
        ctx.setLineDash([]);
      }
    }
    ctx.restore();
  }

  function drawLimits(u, limits) {
    const ctx = u.ctx, box = u.bbox, dpr = devicePixelRatio;
    ctx.save();
    ctx.font = font(11);
    ctx.textAlign = 'right';
    ctx.textBaseline = 'bottom';
    ctx.strokeStyle = ctx.fillStyle = tone('--limit');
    ctx.lineWidth = 1.5 * dpr;
    for (const limit of limits) {
      const y = u.valToPos(limit.value, 'y', true);
      ctx.setLineDash([12 * dpr, 3 * dpr, 2 * dpr, 3 * dpr]);
      ctx.beginPath();
      ctx.moveTo(box.left, y);
      ctx.lineTo(box.left + box.width, y);
      ctx.stroke();
      ctx.setLineDash([]);
      ctx.fillText(limit.label + ' ' + number(limit.value), box.left + box.width - 4 * dpr, y - 2 * dpr);
    }
    ctx.restore();
  }

  function build(figure, plot) {
    const host = figure.querySelector('.panels');
    const buttons = [...figure.querySelectorAll('.legend button')];
    const places = plot.x;
    const full = { min: places[0], max: places[places.length - 1] };
    let charts = [];
    let moving = false;

    function showAt(index) {
      for (const button of buttons) {
        const y = plot.panels[button.dataset.panel].lines[button.dataset.line].y;
        button.querySelector('output').textContent = index == null ? '' : number(y[index]);
      }
      const at = figure.querySelector('.at');
      const here = index == null ? [] : plot.bands.filter(b => bandHolds(b, places[index]));
      at.textContent =
        index == null
          ? ''
          : [plot.xLabel + ' ' + number(places[index]) + ' ' + plot.xUnit]
              .concat(here.map(b => b.label))
              .join(', ');
    }

    // The last band holds its end, too: there is no place after it.
    function bandHolds(band, x) {
      return x >= band.from && (x < band.to || (x === full.max && band.to === full.max));
    }

    function zoom(min, max) {
      if (!(max > min)) return;
      charts.forEach(c => c.setScale('x', { min, max }));
    }

    function chart(panel, i) {
      const last = i === plot.panels.length - 1;
      const small = host.clientWidth < 520 || matchMedia('print').matches;
      const height = i === 0 ? (small ? 240 : 330) : small ? 110 : 150;
      return new uPlot(
        {
          width: host.clientWidth,
          height: height + (last ? 30 : 0),
          padding: [i === 0 && plot.bands.length ? 28 : 8, 22, last ? 0 : 4, 0],
          legend: { show: false },
          cursor: { sync: { key: plot.id, setSeries: false }, drag: { x: true, y: false } },
          scales: { x: { time: false }, y: { range: yRange(panel) } },
          axes: [
            {
              stroke: tone('--ink'),
              grid: { stroke: tone('--grid'), width: 1 },
              ticks: { show: last },
              size: last ? 34 : 4,
              values: (u, splits) => splits.map(v => (last && v != null ? plain(v) : '')),
            },
            {
              stroke: tone('--ink'),
              grid: { stroke: tone('--grid'), width: 1 },
              size: AXIS_WIDTH,
              values: (u, splits) => splits.map(v => (v == null ? '' : plain(v))),
            },
          ],
          series: [{}].concat(
            panel.lines.map((line, k) => ({
              label: line.label,
              stroke: tone('--c' + line.colour),
              width: line.stroke === 'points' ? 0 : 2,
              dash: DASHES[line.stroke],
              points: line.stroke === 'points' ? { show: true, size: 7 } : { show: false },
              show: panel.shown ? panel.shown[k] : true,
            }))),
          hooks: {
            draw: [
              u => {
                drawBands(u, plot.bands, i === 0);
                drawLimits(u, panel.limits);
              },
            ],
            setCursor: [u => showAt(u.cursor.idx)],
            setScale: [
              (u, key) => {
                if (key !== 'x' || moving) return;
                moving = true;
                const { min, max } = u.scales.x;
                figure.querySelector('.window').textContent =
                  'Shown: ' + number(min) + ' to ' + number(max) + ' ' + plot.xUnit;
                charts.forEach(c => c !== u && c.setScale('x', { min, max }));
                moving = false;
              },
            ],
          },
        },
        [places].concat(panel.lines.map(line => line.y)),
        host.children[i].querySelector('.panel-canvas'));
    }

    function draw() {
      const was = charts.length ? { ...charts[0].scales.x } : null;
      charts.forEach(c => c.destroy());
      charts = plot.panels.map(chart);
      if (was && was.min != null && (was.min !== full.min || was.max !== full.max)) {
        zoom(was.min, was.max);
      }
      figure.dataset.drawn = charts.length;
    }

    function act(what) {
      const { min, max } = charts[0].scales.x;
      const span = max - min;
      if (what === 'in') zoom(min + span * 0.25, max - span * 0.25);
      if (what === 'out') {
        zoom(Math.max(full.min, min - span * 0.5), Math.min(full.max, max + span * 0.5));
      }
      if (what === 'all') zoom(full.min, full.max);
      if (what === 'left') {
        const by = Math.min(span * 0.25, min - full.min);
        zoom(min - by, max - by);
      }
      if (what === 'right') {
        const by = Math.min(span * 0.25, full.max - max);
        zoom(min + by, max + by);
      }
    }

    function cursor(step) {
      const c = charts[0];
      const from = c.cursor.idx == null ? Math.floor(places.length / 2) : c.cursor.idx + step;
      const index = Math.max(0, Math.min(places.length - 1, from));
      c.setCursor({ left: c.valToPos(places[index], 'x'), top: 20 });
    }

    figure.querySelectorAll('.tools button').forEach(button => {
      button.addEventListener('click', () => act(button.dataset.act));
    });
    buttons.forEach(button => {
      button.addEventListener('click', () => {
        const on = button.getAttribute('aria-pressed') !== 'true';
        button.setAttribute('aria-pressed', on);
        const panel = plot.panels[button.dataset.panel];
        panel.shown = panel.shown || panel.lines.map(() => true);
        panel.shown[button.dataset.line] = on;
        charts[button.dataset.panel].setSeries(+button.dataset.line + 1, { show: on });
      });
    });
    host.addEventListener('keydown', event => {
      const step = event.shiftKey ? 20 : 1;
      const keys = {
        ArrowLeft: () => cursor(-step),
        ArrowRight: () => cursor(step),
        '+': () => act('in'),
        '-': () => act('out'),
        0: () => act('all'),
      };
      if (keys[event.key] && !event.ctrlKey && !event.metaKey && !event.altKey) {
        event.preventDefault();
        keys[event.key]();
      }
    });
    host.addEventListener('pointermove', event => {
      if (event.pointerType !== 'touch') return;
      const c = charts[0];
      const box = c.over.getBoundingClientRect();
      c.setCursor({ left: event.clientX - box.left, top: 20 });
    });

    let width = host.clientWidth;
    new ResizeObserver(() => {
      if (host.clientWidth !== width && host.clientWidth > 0) {
        width = host.clientWidth;
        draw();
      }
    }).observe(host);
    draw();
    return draw;
  }

  const figures = document.querySelectorAll('figure.plot');
  const redraws = plots.map((plot, i) => build(figures[i], plot));
  const redraw = () => redraws.forEach(draw => draw());
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', redraw);
  addEventListener('beforeprint', redraw);
  addEventListener('afterprint', redraw);
})();
