/** Makes the page ready for paper: light, all charts drawn, and the first rows of the table as a table that paper can break. */
(function (S) {
  'use strict';

  const ROWS = 30;

  /** As wide as the text on the narrower of the usual sheets, at 96 pixels to the inch. */
  const MAP_PIXELS = [703, 440];

  const KEYS = [
    'rank',
    'span_id',
    'score_points',
    'length_m',
    'positions_now',
    'positions_gained',
    'recovery_likely_money',
    'saving_likely_money',
    'feasible_chance_pct',
    'owner',
  ];

  function table() {
    const columns = KEYS.map(S.unitKey)
      .filter((key) => S.spans.has(key))
      .map((key) => S.spans.column(key));
    const rows = S.live.rows.slice(0, ROWS);
    return [
      S.el(
        'p',
        {},
        'The first ' +
          rows.length +
          ' of ' +
          S.number(S.live.rows.length) +
          ' spans shown' +
          (S.hasOtherWeights() ? ', ranked with other weights than the run.' : '.'),
      ),
      S.el(
        'table',
        { class: 'plain' },
        S.el(
          'thead',
          {},
          S.el(
            'tr',
            {},
            columns.map((column) => S.el('th', { scope: 'col' }, S.heading(column))),
          ),
        ),
        S.el(
          'tbody',
          {},
          rows.map((row) =>
            S.el(
              'tr',
              {},
              columns.map((column) =>
                S.el(
                  'td',
                  {
                    class: column.type === 'text' ? '' : 'number',
                  },
                  S.cell(column, S.currentValue(row, column.key)),
                ),
              ),
            ),
          ),
        ),
      ),
    ];
  }

  S.startPrint = () => {
    window.addEventListener('beforeprint', () => {
      // Drawings have a size in pixels, so the page takes the width of paper before they are drawn for it.
      document.documentElement.classList.add('printing');
      S.put(S.byId('print-table'), table());
      S.drawAllCharts();
      S.whileLight(true);
      S.put(S.byId('map-paper'), S.paperMap(...MAP_PIXELS));
    });
    window.addEventListener('afterprint', () => {
      document.documentElement.classList.remove('printing');
      S.put(S.byId('print-table'));
      S.put(S.byId('map-paper'));
      S.whileLight(false);
    });
    S.byId('print').addEventListener('click', () => window.print());
  };
})(window.Spanroom);
