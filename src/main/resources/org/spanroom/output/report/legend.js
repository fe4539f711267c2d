/** The legend of the map, whose boxes filter the map and the table together. */
(function (S) {
  'use strict';

  function box(isChecked, onChange, ...label) {
    return S.el(
      'label',
      { class: 'legend-line' },
      S.el('input', {
        type: 'checkbox',
        checked: isChecked,
        on: { change: (event) => onChange(event.target.checked) },
      }),
      label,
    );
  }

  function classLines() {
    const counts = S.rankClasses.map(() => 0);
    S.live.ranks.forEach((rank) => {
      counts[S.classOf(rank)]++;
    });
    return S.rankClasses.map((known, place) =>
      counts[place]
        ? box(
            !S.live.hiddenClasses.has(place),
            (isShown) => S.showClass(place, isShown),
            S.el('span', {
              class: 'line-mark',
              'aria-hidden': 'true',
              style: {
                'background-color': 'var(--' + known.key + ')',
                height: known.width + 'px',
              },
            }),
            known.label,
            S.el('span', { class: 'count' }, S.number(counts[place])),
          )
        : null,
    );
  }

  function layerLine(key, label, mark, count) {
    return count
      ? box(
          S.layers[key],
          (isShown) => {
            S.layers[key] = isShown;
            S.fire('layers');
            draw();
          },
          S.el('span', { class: 'layer-mark ' + mark, 'aria-hidden': 'true' }),
          label,
          S.el('span', { class: 'count' }, S.number(count)),
        )
      : null;
  }

  function zoneKinds() {
    const present = new Set(S.shapes.zones.map((zone) => zone.color));
    return S.layers.zones
      ? S.el(
          'ul',
          { class: 'legend-keys' },
          Object.entries(S.zoneClasses)
            .filter(([color]) => present.has(color))
            .map(([color, label]) => S.el('li', {}, S.swatch(color), label)),
        )
      : null;
  }

  function severities() {
    return S.layers.findings
      ? S.el(
          'ul',
          { class: 'legend-keys' },
          Object.entries(S.severityClasses).map(([color, label]) => S.el('li', {}, S.swatch(color), label)),
        )
      : null;
  }

  function colorChoice() {
    if (!S.data.program) {
      return null;
    }
    const choice = (value, label) =>
      S.el(
        'label',
        { class: 'legend-line' },
        S.el('input', {
          type: 'radio',
          name: 'color-by',
          value,
          checked: S.layers.colorBy === value,
          on: {
            change: () => {
              S.layers.colorBy = value;
              S.fire('layers');
              draw();
              S.byId('legend')
                .querySelector('input[value="' + value + '"]')
                .focus();
            },
          },
        }),
        label,
      );
    return S.el(
      'fieldset',
      { class: 'color-by' },
      S.el('legend', {}, 'Color lines by'),
      choice('rank', 'Rank'),
      choice('year', 'Program year'),
      S.layers.colorBy === 'year'
        ? S.el(
            'ul',
            { class: 'legend-keys' },
            S.yearClasses
              .slice(0, S.data.program.years.length)
              .map((label, place) => S.el('li', {}, S.swatch(S.yearColor(place)), label)),
            S.el('li', {}, S.swatch('map-faint'), 'Not in the program'),
          )
        : null,
    );
  }

  /** Draws the legend again, and keeps the focus on the box that was used. */
  function draw() {
    const legend = S.byId('legend');
    const boxes = () => [...legend.querySelectorAll('input')];
    const focused = boxes().indexOf(document.activeElement);
    S.put(
      legend,
      colorChoice(),
      S.el(
        'fieldset',
        {},
        S.el('legend', {}, S.hasOtherWeights() ? 'Spans by rank, other weights' : 'Spans by rank'),
        classLines(),
      ),
      S.el(
        'fieldset',
        {},
        S.el('legend', {}, 'Layers'),
        layerLine('streets', 'Streets', 'mark-street', S.shapes.streets.length),
        layerLine('zones', 'Permit zones', 'mark-zone', S.shapes.zones.length),
        zoneKinds(),
        layerLine('corridors', 'Corridors worth recovering', 'mark-corridor', S.shapes.corridorSections.size),
        layerLine('vaults', 'Vaults (when near)', 'mark-vault', S.shapes.vaults.length),
        layerLine('findings', 'Findings', 'mark-finding', S.shapes.findings.length),
        severities(),
        layerLine('checks', 'Field checks', 'mark-check', S.shapes.checks.length),
      ),
    );
    if (focused >= 0 && boxes()[focused]) {
      boxes()[focused].focus();
    }
  }

  S.startLegend = () => {
    draw();
    if (window.innerWidth < 900) {
      S.byId('legend-box').open = false;
    }
    S.on('ranks', draw);
    S.on('cleared', draw);
  };
})(window.Spanroom);
