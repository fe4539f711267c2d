/** The elements of the table: its head, and the rows that are in view. */
(function (S) {
  'use strict';

  const ROW_HEIGHT = 32;
  const SPARE_ROWS = 6;
  const drawn = new Map();

  const scroller = () => S.byId('grid');
  const head = () => S.byId('grid-head');
  const body = () => S.byId('grid-body');

  function widthOf(column) {
    if (column.key === 'span_id') {
      return S.data.counts.spans > 9999 ? 16 : 14;
    }
    if (column.key === 'rank') {
      const isLong = S.data.counts.ranked > 9999;
      return S.hasOtherWeights() ? (isLong ? 10.5 : 8.5) : isLong ? 6.5 : 5.2;
    }
    if (column.type !== 'text') {
      const heading = S.heading(column);
      const letters = Math.max(heading.length / 2, ...heading.split(' ').map((word) => word.length));
      return Math.max(4.8, Math.min(9, 0.5 * letters + 1.4));
    }
    return /exclusion|cautions|reasons|needs|zone_kinds|owner|routes/.test(column.key) ? 15 : 9;
  }

  /** Head, filters and widths. */
  S.drawHead = () => {
    const { columns } = S.grid;
    const widths = columns.map((column) => widthOf(column) + 'rem');
    scroller().style.setProperty('--columns', widths.join(' '));
    scroller().style.setProperty('--first', widths[0]);
    scroller().setAttribute('aria-colcount', columns.length);
    const sort = S.live.sort;
    const cells = columns.map((column, place) => {
      const isSorted = sort && sort.key === column.key;
      return S.el(
        'div',
        {
          role: 'columnheader',
          class: 'cell head-cell ' + column.type + (column.key === 'rank' ? ' rank-cell' : ''),
          'data-column': place,
          'aria-colindex': place + 1,
          'aria-sort': isSorted ? (sort.isDescending ? 'descending' : 'ascending') : 'none',
          title: column.meaning,
          tabindex: S.grid.row === -1 && S.grid.column === place ? 0 : -1,
        },
        S.el('span', {}, S.heading(column)),
        isSorted ? S.el('span', { class: 'sort-mark', 'aria-hidden': 'true' }, sort.isDescending ? '▼' : '▲') : null,
      );
    });
    const line = S.el('div', { role: 'row', class: 'line', 'aria-rowindex': 1, 'data-index': -1 }, cells);
    const hadFocus = document.activeElement.matches('.head-cell');
    const filters = S.byId('grid-filters');
    if (filters && filters.dataset.columns === keys()) {
      // Someone may be typing into the filters, so they stay where they are.
      head().firstElementChild.replaceWith(line);
    } else {
      S.put(head(), line, filterLine());
    }
    if (hadFocus) {
      S.focusCell();
    }
  };

  const keys = () => S.grid.columns.map((column) => column.key).join();

  const filterLine = () =>
    S.el(
      'div',
      {
        role: 'row',
        class: 'line',
        id: 'grid-filters',
        'data-columns': keys(),
        'aria-rowindex': 2,
        hidden: !S.grid.hasFilters,
      },
      S.grid.columns.map((column, place) => {
        const isNumber = column.type === 'integer' || column.type === 'real';
        return S.el(
          'div',
          { role: 'gridcell', class: 'cell filter-cell', 'aria-colindex': place + 1 },
          S.el('input', {
            type: 'text',
            value: S.live.filters.get(column.key) || '',
            placeholder: isNumber ? '>5 or 3..7' : 'contains',
            'aria-label': 'Filter ' + S.heading(column) + (isNumber ? ', for example >5 or 3..7' : ', contains'),
            on: {
              input: (event) => {
                const text = event.target.value;
                const isUnread = isNumber && text.trim() !== '' && !S.numberFilter(text);
                event.target.setAttribute('aria-invalid', String(isUnread));
                S.setFilter(column.key, isUnread ? '' : text);
              },
            },
          }),
        );
      }),
    );

  function cellContent(column, row) {
    if (column.key !== 'rank') {
      return [S.cell(column, S.currentValue(row, column.key))];
    }
    const rank = S.live.ranks[row];
    const was = S.live.runRanks[row];
    return [
      S.swatch(S.rankClasses[S.classOf(rank)].key),
      rank ? S.number(rank) : '–',
      S.hasOtherWeights() && rank && rank !== was
        ? S.el(
            'span',
            { class: 'moved', title: 'Rank in the run: ' + was },
            (rank < was ? '▲' : '▼') + S.number(Math.abs(was - rank)),
          )
        : null,
    ];
  }

  function makeRow(index) {
    const row = S.live.rows[index];
    const isSelected = row === S.live.selected;
    return S.el(
      'div',
      {
        role: 'row',
        class: 'line body-line' + (isSelected ? ' selected' : '') + (row === S.live.hover ? ' hover' : ''),
        'aria-rowindex': index + 3,
        'aria-selected': isSelected,
        'data-index': index,
        'data-row': row,
        style: { transform: 'translateY(' + index * ROW_HEIGHT + 'px)' },
      },
      S.grid.columns.map((column, place) =>
        S.el(
          'div',
          {
            role: 'gridcell',
            class: 'cell ' + column.type + (column.key === 'rank' ? ' rank-cell' : ''),
            'data-column': place,
            'aria-colindex': place + 1,
            tabindex: index === S.grid.row && place === S.grid.column ? 0 : -1,
          },
          cellContent(column, row),
        ),
      ),
    );
  }

  S.rowsInView = () => Math.max(1, Math.floor((scroller().clientHeight - head().offsetHeight) / ROW_HEIGHT));

  /**
   * Makes the rows in view.
   *
   * @param isAll whether rows that are there already must be made again
   */
  S.drawRows = (isAll) => {
    const hadFocus = scroller().contains(document.activeElement) && document.activeElement.matches('[data-column]');
    const count = S.live.rows.length;
    body().style.height = Math.max(count, 1) * ROW_HEIGHT + 'px';
    scroller().setAttribute('aria-rowcount', count + 2);
    const first = Math.max(0, Math.floor(scroller().scrollTop / ROW_HEIGHT) - SPARE_ROWS);
    const last = Math.min(count, first + S.rowsInView() + 2 * SPARE_ROWS);
    const wanted = new Set();
    for (let index = first; index < last; index++) {
      wanted.add(index);
    }
    // The cell that has the focus must exist even where it is out of view.
    if (S.grid.row >= 0 && S.grid.row < count) {
      wanted.add(S.grid.row);
    }
    for (const [index, element] of drawn) {
      if (isAll || !wanted.has(index)) {
        element.remove();
        drawn.delete(index);
      }
    }
    for (const index of [...wanted].sort((a, b) => a - b)) {
      if (!drawn.has(index)) {
        const element = makeRow(index);
        drawn.set(index, element);
        body().append(element);
      }
    }
    if (hadFocus && isAll) {
      S.focusCell();
    }
  };

  function cellAt() {
    const { row, column } = S.grid;
    const line = row < 0 ? head().firstElementChild : drawn.get(row);
    return line && line.children[column];
  }

  /** Gives the focus to the cell where one is, which alone is a stop of the tab key. */
  S.focusCell = () => {
    scroller()
      .querySelectorAll('[data-column][tabindex="0"]')
      .forEach((cell) => cell.setAttribute('tabindex', '-1'));
    const cell = cellAt();
    if (cell) {
      cell.setAttribute('tabindex', '0');
      cell.focus({ preventScroll: true });
    }
  };

  /** Scrolls so that the cell where one is can be seen, below the head and right of the first column. */
  S.scrollToCell = () => {
    const box = scroller();
    if (S.grid.row >= 0) {
      const top = S.grid.row * ROW_HEIGHT;
      const room = box.clientHeight - head().offsetHeight;
      if (top < box.scrollTop) {
        box.scrollTop = top;
      } else if (top + ROW_HEIGHT > box.scrollTop + room) {
        box.scrollTop = top + ROW_HEIGHT - room;
      }
    }
    const cells = head().firstElementChild.children;
    const cell = cells[S.grid.column];
    // The first two columns stay where they are and cover what scrolls below them.
    const covered =
      getComputedStyle(cells[0]).position === 'sticky' && cells[1] ? cells[0].offsetWidth + cells[1].offsetWidth : 0;
    if (S.grid.column < 2 && covered) {
      return;
    }
    if (cell.offsetLeft < box.scrollLeft + covered) {
      box.scrollLeft = cell.offsetLeft - covered;
    } else if (cell.offsetLeft + cell.offsetWidth > box.scrollLeft + box.clientWidth) {
      box.scrollLeft = cell.offsetLeft + cell.offsetWidth - box.clientWidth;
    }
  };

  /** Marks the row of the span under the pointer, on the map or here. */
  S.markHover = () => {
    for (const element of drawn.values()) {
      element.classList.toggle('hover', Number(element.dataset.row) === S.live.hover);
    }
  };
})(window.Spanroom);
