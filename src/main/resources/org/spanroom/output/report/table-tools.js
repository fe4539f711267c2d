/** What is above the table: search, filters, which columns, how many rows, and saving them. */
(function (S) {
  'use strict';

  function chooser() {
    const list = S.byId('column-list');
    const shown = new Set(S.grid.columns.map((column) => column.key));
    S.put(
      list,
      S.spans.columns.map((column) =>
        S.el(
          'label',
          { title: column.meaning },
          S.el('input', {
            type: 'checkbox',
            checked: shown.has(column.key),
            on: {
              change: (event) => {
                const now = S.grid.columns.map((other) => other.key);
                S.setColumns(event.target.checked ? [...now, column.key] : now.filter((key) => key !== column.key));
                count();
              },
            },
          }),
          S.heading(column),
        ),
      ),
    );
  }

  function isFiltered() {
    return S.live.filters.size > 0 || S.live.search !== '' || S.live.hiddenClasses.size > 0;
  }

  function count() {
    const all = S.spans.rows;
    const shown = S.live.rows.length;
    const inRun = S.data.counts.spans;
    S.byId('table-count').textContent =
      (shown === all ? S.number(all) : S.number(shown) + ' of ' + S.number(all)) +
      ' spans' +
      (inRun > all ? ' (the run has ' + S.number(inRun) + ')' : '');
    S.byId('clear-filters').hidden = !isFiltered();
    S.byId('grid-empty').hidden = shown > 0;
  }

  function save() {
    S.download('spans-shown.csv', 'text/csv;charset=utf-8', '\ufeff' + S.csvOf(S.grid.columns, S.live.rows));
    S.announce(S.number(S.live.rows.length) + ' rows saved');
  }

  function toggleFilters() {
    const button = S.byId('show-filters');
    S.grid.hasFilters = !S.grid.hasFilters;
    button.setAttribute('aria-expanded', String(Boolean(S.grid.hasFilters)));
    S.byId('grid-filters').hidden = !S.grid.hasFilters;
    if (S.grid.hasFilters) {
      S.byId('grid-filters').querySelector('input').focus();
    }
  }

  /** A menu closes by Escape and by a click elsewhere, and gives the focus back. */
  function closing(menu) {
    menu.addEventListener('keydown', (event) => {
      if (event.key === 'Escape' && menu.open) {
        event.stopPropagation();
        menu.open = false;
        menu.querySelector('summary').focus();
      }
    });
    document.addEventListener('pointerdown', (event) => {
      if (!menu.contains(event.target)) {
        menu.open = false;
      }
    });
  }

  S.startTableTools = () => {
    const search = S.byId('search');
    let pause;
    search.addEventListener('input', () => {
      clearTimeout(pause);
      pause = setTimeout(() => S.setSearch(search.value), S.spans.rows > 20000 ? 200 : 0);
    });
    S.byId('show-filters').addEventListener('click', toggleFilters);
    S.byId('save-csv').addEventListener('click', save);
    S.byId('clear-filters').addEventListener('click', () => {
      S.clearFilters();
      search.focus();
    });
    S.on('cleared', () => {
      search.value = '';
      S.byId('grid-filters')
        .querySelectorAll('input')
        .forEach((input) => {
          input.value = '';
        });
    });
    const menu = S.byId('column-menu');
    closing(menu);
    menu.addEventListener('toggle', () => menu.open && chooser());
    S.on('rows', count);
    count();
  };
})(window.Spanroom);
