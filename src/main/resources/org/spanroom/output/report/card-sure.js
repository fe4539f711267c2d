/** How certain the figures of a span are. */
(function (S) {
  'use strict';

  const value = (row, key) => S.spans.value(row, key);

  function rangeBar(label, low, middle, high, least, most, write) {
    const at = (number) => Math.max(0, Math.min(100, (100 * (number - least)) / (most - least || 1))) + '%';
    const span = (100 * (high - low)) / (most - least || 1) + '%';
    return S.el(
      'div',
      { class: 'range' },
      S.el('span', { class: 'range-label' }, label),
      S.el(
        'span',
        { class: 'range-track', 'aria-hidden': 'true' },
        S.el('span', { class: 'range-part', style: { left: at(low), width: span } }),
        S.el('span', { class: 'range-point', style: { left: at(middle) } }),
      ),
      S.el('span', { class: 'range-text' }, write(low) + ' to ' + write(high)),
    );
  }

  /** How certain all this is. */
  S.surePart = (row) => {
    const band = S.spans.raw.band && S.spans.raw.band[row];
    const chance = value(row, 'feasible_chance_pct');
    const top = value(row, 'top_chance_pct');
    const [low, high] = [value(row, 'score_low_points'), value(row, 'score_high_points')];
    const [moneyLow, money, moneyHigh] = ['low', 'likely', 'high'].map((name) =>
      value(row, 'recovery_' + name + '_money'),
    );
    if (chance === null && low === null) {
      return S.el('p', {}, 'The run did not simulate this span, so there is no range to show.');
    }
    return [
      S.hasOtherWeights()
        ? S.el('p', { class: 'note' }, 'Calculated with the weights of the run, not with those of What if.')
        : null,
      S.el(
        'ul',
        {},
        chance === null
          ? null
          : S.el(
              'li',
              {},
              'In ' +
                S.number(chance, 1) +
                ' % of the draws of what is assumed or uncertain the span can be recovered and gains room.',
            ),
        top === null ? null : S.el('li', {}, 'In ' + S.number(top, 1) + ' % of the draws it is among the top ' + S.number(S.data.counts.top) + '.'),
        band
          ? S.el('li', {}, 'Band ' + band + ': the draws do not clearly separate it from other spans of that band.')
          : null,
      ),
      low === null
        ? null
        : rangeBar('Score, low to high', low, value(row, 'score_points'), high, 0, 100, (number) =>
            S.number(number, 1),
          ),
      moneyLow === null
        ? null
        : rangeBar('Cost, low to high', moneyLow, money, moneyHigh, 0, moneyHigh * 1.1, (number) => S.number(number)),
    ];
  };
})(window.Spanroom);
