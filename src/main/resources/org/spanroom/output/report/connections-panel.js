/** The connections that the program is asked to serve. */
(function (S) {
  'use strict';

  /** Which wanted connections are served, when, and why others are not. */
  S.connectionsPanel = (program) => {
    const table = new S.Table(program.connections);
    if (!table.rows) {
      return null;
    }
    const rows = Array.from({ length: table.rows }, (_, row) => table.row(row));
    const served = rows.filter((row) => row.served_year !== null);
    const isFree = (row) => !row.recover_spans && !(row.cost_share_money > 0);
    const late = served.filter((row) => row.on_time === false).length;
    const line = (row) =>
      S.el(
        'tr',
        {},
        S.el('th', { scope: 'row' }, row.name),
        S.el('td', {}, row.vault_from + ' to ' + row.vault_to),
        S.el('td', { class: 'number' }, S.number(row.cables)),
        S.el('td', {}, row.needed_by || ''),
        S.el(
          'td',
          {},
          row.served_year === null
            ? 'not served' + (row.why_not ? ': ' + row.why_not : '')
            : (isFree(row) ? 'from positions that are free today' : 'year ' + row.served_year + ', on ' + row.served_on) +
              (row.on_time === false ? ', late' : ''),
        ),
      );
    return S.el(
      'div',
      { class: 'panel chart-panel wide' },
      S.el('h3', {}, 'Connections'),
      S.el(
        'p',
        { class: 'says' },
        S.number(served.length) +
          ' of ' +
          S.number(rows.length) +
          ' wanted connections are served, ' +
          S.number(served.filter(isFree).length) +
          ' of them from positions that are free today' +
          (late ? '; ' + S.number(late) + ' late' : '') +
          '.',
      ),
      S.el(
        'div',
        { class: 'scroll-x', tabindex: 0, role: 'region', 'aria-label': 'Connections' },
        S.el(
          'table',
          { class: 'plain' },
          S.el(
            'thead',
            {},
            S.el(
              'tr',
              {},
              ['Connection', 'Vaults', 'Cables', 'Needed by', 'Served'].map((head) =>
                S.el('th', { scope: 'col' }, head),
              ),
            ),
          ),
          S.el('tbody', {}, rows.map(line)),
        ),
      ),
    );
  };
})(window.Spanroom);
