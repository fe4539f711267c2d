/**
 * The table of spans: where one is in it, and what keys and clicks do. Only the rows in view exist as elements (table-view.js), so that
 * 100 000 rows scroll like 100.
 */
(function (S) {
  'use strict';

  const grid = { columns: [], row: 0, column: 0 };
  S.grid = grid;

  /** Takes the columns to show, by key. */
  S.setColumns = (keys) => {
    grid.columns = keys.map((key) => S.spans.column(key));
    grid.column = Math.min(grid.column, grid.columns.length - 1);
    S.drawHead();
    S.drawRows(true);
  };

  /** Rank and id first, then figures, then texts, which are wide; a metric column whose twin in US units is shown is left to the chooser. */
  function firstColumns() {
    const shown = S.spans.columns
      .filter((column) => column.shown && S.unitKey(column.key) === column.key)
      .map((column) => column.key);
    const lead = ['rank', 'span_id', 'score_points'].filter((key) => S.spans.has(key));
    const isText = (key) => S.spans.column(key).type === 'text';
    const others = shown.filter((key) => !lead.includes(key));
    return [...lead, ...others.filter((key) => !isText(key)), ...others.filter(isText)];
  }

  /** Goes to a cell; row -1 is the head. */
  function goTo(row, column) {
    grid.row = Math.max(-1, Math.min(row, S.live.rows.length - 1));
    grid.column = Math.max(0, Math.min(column, grid.columns.length - 1));
    S.scrollToCell();
    S.drawRows(false);
    S.focusCell();
    S.hoverOver(grid.row < 0 ? null : S.live.rows[grid.row]);
  }

  function sortBy(column) {
    const key = column.key;
    const sort = S.live.sort;
    if (!sort || sort.key !== key) {
      S.setSort({ key, isDescending: false });
    } else {
      S.setSort(sort.isDescending ? null : { key, isDescending: true });
    }
    const now = S.live.sort;
    S.announce(
      now
        ? 'Sorted by ' + S.columnLabel(column) + (now.isDescending ? ', largest first' : ', smallest first')
        : 'In the order of the ranking',
    );
  }

  function act() {
    if (grid.row < 0) {
      sortBy(grid.columns[grid.column]);
    } else if (S.live.rows.length) {
      S.select(S.live.rows[grid.row], { from: 'table' });
    }
  }

  function onKey(event) {
    if (event.target.tagName === 'INPUT' || event.altKey || event.metaKey) {
      return;
    }
    const page = S.rowsInView();
    const last = S.live.rows.length - 1;
    const moves = {
      ArrowDown: [grid.row + 1, grid.column],
      ArrowUp: [grid.row - 1, grid.column],
      ArrowRight: [grid.row, grid.column + 1],
      ArrowLeft: [grid.row, grid.column - 1],
      PageDown: [grid.row + page, grid.column],
      PageUp: [Math.max(0, grid.row - page), grid.column],
      Home: [event.ctrlKey ? 0 : grid.row, 0],
      End: [event.ctrlKey ? last : grid.row, grid.columns.length - 1],
    };
    if (moves[event.key]) {
      event.preventDefault();
      goTo(...moves[event.key]);
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      act();
    }
  }

  function placeOf(target) {
    const cell = target.closest('[data-column]');
    const line = target.closest('[data-index]');
    return cell && line ? [Number(line.dataset.index), Number(cell.dataset.column)] : null;
  }

  function onClick(event) {
    const place = placeOf(event.target);
    if (place && event.target.tagName !== 'INPUT') {
      goTo(...place);
      act();
    }
  }

  /** Brings the table to the span of the card, wherever it was chosen. */
  function follow() {
    const index = S.live.rows.indexOf(S.live.selected);
    if (index >= 0 && S.live.selectOptions.from !== 'table') {
      grid.row = index;
      S.scrollToCell();
    }
    S.drawRows(true);
  }

  S.startTable = () => {
    const element = S.byId('grid');
    element.addEventListener('keydown', onKey);
    element.addEventListener('click', onClick);
    element.addEventListener('mouseover', (event) => {
      const place = placeOf(event.target);
      S.hoverOver(place && place[0] >= 0 ? S.live.rows[place[0]] : null);
    });
    element.addEventListener('mouseleave', () => S.hoverOver(null));
    element.addEventListener(
      'scroll',
      S.oncePerFrame(() => S.drawRows(false)),
      { passive: true },
    );
    new ResizeObserver(S.oncePerFrame(() => S.drawRows(false))).observe(element);
    S.startTableTools();
    S.setColumns(firstColumns());
    S.on('rows', () => {
      grid.row = Math.min(grid.row, S.live.rows.length - 1);
      S.drawHead();
      S.drawRows(true);
    });
    S.on('selected', follow);
    S.on('hover', S.markHover);
  };
})(window.Spanroom);
