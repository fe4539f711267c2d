/** The parts of a span's card that its columns fill, and those of its details. */
(function (S) {
  'use strict';

  const value = (row, key) => S.spans.value(row, key);

  function figure(label, text, note) {
    return text
      ? S.el(
          'div',
          { class: 'figure' },
          S.el('dt', {}, label),
          S.el('dd', {}, text, note ? S.el('small', {}, note) : null),
        )
      : null;
  }

  function range(row, stem) {
    const [low, high] = [value(row, stem + '_low_money'), value(row, stem + '_high_money')];
    return low === null || high === null ? '' : S.number(low) + ' to ' + S.number(high);
  }

  /** The likely amount, or that at the rates as they are where the run did not vary them. */
  const likely = (row, stem) => {
    const amount = value(row, stem + '_likely_money');
    return amount === null ? value(row, stem + '_money') : amount;
  };

  /** The figures that one asks for first. */
  S.keyFigures = (row) =>
    S.el(
      'dl',
      { class: 'figures' },
      figure(
        'Positions',
        value(row, 'positions_now') === null ? '' : value(row, 'positions_now') + ' → ' + value(row, 'positions_after'),
        value(row, 'positions_gained') === null ? '' : value(row, 'positions_gained') + ' gained',
      ),
      figure('Recovery cost, likely', S.money(likely(row, 'recovery')), range(row, 'recovery')),
      figure('New build instead', S.money(likely(row, 'build')), range(row, 'build')),
      figure('Saving', S.money(likely(row, 'saving')), range(row, 'saving')),
      figure('Length', S.spanText(row, 'length_m')),
      figure('Bends', S.spanText(row, 'bend_total_deg')),
      figure(
        'Pull limit used',
        S.spanText(row, 'pull_utilization_pct'),
        S.wordsOf('pull_outcome', value(row, 'pull_outcome')).join('; '),
      ),
      figure('Work on site', S.spanText(row, 'site_hours')),
      figure('Chance that it works', S.spanText(row, 'feasible_chance_pct')),
    );

  function bar(share, filled, color) {
    return S.el(
      'span',
      { class: 'bar', 'aria-hidden': 'true' },
      S.el('span', { class: 'bar-room', style: { width: 100 * share + '%' } }),
      S.el('span', {
        class: 'bar-fill',
        style: { width: 100 * filled + '%', 'background-color': 'var(--' + color + ')' },
      }),
    );
  }

  function pointsSentence(row) {
    const points = S.live.points[row];
    if (Number.isNaN(points)) {
      return 'The score is not known, since a quantity that it judges is not.';
    }
    const before = S.hasOtherWeights()
      ? ' with the weights of What if; the run gave ' + S.number(value(row, 'score_points'), 2)
      : '';
    return S.number(points, 2) + ' of 100 points' + before + '.';
  }

  /** Where the points come from, at the weights of now. */
  S.scorePart = (row) => {
    const shares = S.weightShares(S.live.weights);
    const largest = Math.max(...shares);
    const lines = S.data.score.criteria.map((criterion, place) => {
      const ratio = S.live.values[place][row];
      const column = S.quantityColumn(criterion);
      const quantity = S.spans.has(column) ? S.spanText(row, column) : '';
      const unit = quantity && !S.spans.column(column).unit ? ' ' + criterion.unit : '';
      return shares[place] > 0
        ? S.el(
            'tr',
            {},
            S.el('th', { scope: 'row' }, S.criterionLabel(criterion)),
            S.el('td', {}, quantity + unit),
            S.el('td', { class: 'number' }, S.number(100 * shares[place], 0) + ' %'),
            S.el('td', { class: 'number' }, Number.isNaN(ratio) ? 'unknown' : S.number(100 * ratio * shares[place], 1)),
            S.el(
              'td',
              { class: 'bar-cell' },
              bar(shares[place] / largest, ((Number.isNaN(ratio) ? 0 : ratio) * shares[place]) / largest, 'accent'),
            ),
          )
        : null;
    });
    return [
      S.el('p', {}, pointsSentence(row)),
      S.el(
        'div',
        { class: 'scroll-x', tabindex: 0, role: 'region', 'aria-label': 'Score parts' },
        S.el(
          'table',
          { class: 'plain' },
          S.el(
            'thead',
            {},
            S.el(
              'tr',
              {},
              ['Criterion', 'Quantity', 'Weight', 'Points'].map((head) => S.el('th', { scope: 'col' }, head)),
              S.el('td'),
            ),
          ),
          S.el('tbody', {}, lines),
        ),
      ),
    ];
  };

  const NEW_BUILD = 'new build: ';

  /** Recovery and new build are alternatives: a sum of both would mean nothing. */
  function totals(lines) {
    const sum = (isNewBuild) =>
      lines
        .filter(([part]) => part.startsWith(NEW_BUILD) === isNewBuild)
        .reduce((total, line) => total + line[4], 0);
    const [recovery, newBuild] = [sum(false), sum(true)];
    return [
      ['Recovery, at the rates', recovery],
      ['New build, at the rates', newBuild],
      ['Saving, at the rates', newBuild - recovery],
    ].map(([label, amount]) =>
      S.el(
        'tr',
        {},
        S.el('th', { scope: 'row', colspan: 4 }, label),
        S.el('td', { class: 'number' }, S.number(amount, 2)),
        S.el('td'),
      ),
    );
  }

  /** The account, line by line. */
  S.moneyPart = (lines) =>
    S.el(
      'div',
      { class: 'scroll-x', tabindex: 0, role: 'region', 'aria-label': 'Money line by line' },
      S.el(
        'table',
        { class: 'plain' },
        S.el(
          'thead',
          {},
          S.el(
            'tr',
            {},
            ['What', 'Vault', 'Quantity', 'Rate', S.currency, 'Source of the rate'].map((head) =>
              S.el('th', { scope: 'col' }, head),
            ),
          ),
        ),
        S.el(
          'tbody',
          {},
          lines.map(([part, place, quantity, rate, amount, source]) =>
            S.el(
              'tr',
              {},
              S.el('th', { scope: 'row' }, part),
              S.el('td', {}, place),
              S.el('td', {}, quantity),
              S.el('td', {}, rate),
              S.el('td', { class: 'number' }, S.number(amount, 2)),
              S.el('td', {}, source),
            ),
          ),
        ),
        S.el('tfoot', {}, totals(lines)),
      ),
    );

  /** Every column of the span, since the parts above show only some. */
  S.allColumns = (row) =>
    S.el(
      'dl',
      { class: 'pairs' },
      S.spans.columns.map((column) => {
        const text = S.cell(column, S.currentValue(row, column.key));
        return text === ''
          ? null
          : S.el('div', {}, S.el('dt', { title: column.meaning }, S.heading(column)), S.el('dd', {}, text));
      }),
    );
})(window.Spanroom);
