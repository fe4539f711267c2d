/** Which spans are shown, in which order: search, a filter for each column, classes that the legend hides, the chosen sort. */
(function (S) {
  'use strict';

  const COMPARED = /^(>=|<=|>|<|=)\s*(-?[\d.,]+)$/;
  const RANGE = /^(-?[\d.,]+)\s*(?:\.\.|to)\s*(-?[\d.,]+)$/i;

  const number = (text) => (/\d/.test(text) ? Number(text.replaceAll(',', '')) : NaN);

  /**
   * Reads a filter of a column with numbers: `>5`, `<=5`, `5`, `3..7`, `3 to 7`.
   *
   * @returns {?function(?number): boolean} null for a text that is none, also for one that is not finished, as `>`: it filters nothing
   */
  S.numberFilter = (text) => {
    const filter = text.trim();
    const range = RANGE.exec(filter);
    if (range) {
      const [low, high] = [number(range[1]), number(range[2])];
      return Number.isNaN(low) || Number.isNaN(high)
        ? null
        : (value) => value !== null && value >= low && value <= high;
    }
    const compared = COMPARED.exec(filter) || (/^-?[\d.,]+$/.test(filter) ? [filter, '=', filter] : null);
    if (compared) {
      const limit = number(compared[2]);
      const tests = {
        '>': (value) => value > limit,
        '<': (value) => value < limit,
        '>=': (value) => value >= limit,
        '<=': (value) => value <= limit,
        '=': (value) => value === limit,
      };
      return Number.isNaN(limit) ? null : (value) => value !== null && tests[compared[1]](value);
    }
    return null;
  };

  /** What a column has in a row now: rank and points follow the weights. */
  S.currentValue = (row, key) => {
    if (key === 'rank') {
      return S.live.ranks[row] || null;
    }
    return key === 'score_points' ? S.live.points[row] : S.spans.value(row, key);
  };

  function columnTest(key, text) {
    const column = S.spans.column(key);
    if (column.type === 'integer' || column.type === 'real') {
      const byNumber = S.numberFilter(text) || (() => true);
      return (row) => byNumber(S.currentValue(row, key));
    }
    const wanted = text.trim().toLowerCase();
    const known = new Map();
    return (row) => {
      const value = S.currentValue(row, key);
      if (!known.has(value)) {
        known.set(value, S.cell(column, value).toLowerCase().includes(wanted));
      }
      return known.get(value);
    };
  }

  let searched = null;

  /** All that one may search a span by, put together once. */
  function searchTexts() {
    if (!searched) {
      const keys = ['span_id', 'duct', 'duct_bank', 'vault_a', 'vault_b', 'owner', 'exclusion']
        .concat(S.spans.columns.map((column) => column.key).filter((key) => key.startsWith('src_')))
        .filter((key) => S.spans.has(key));
      searched = Array.from({ length: S.spans.rows }, (_, row) =>
        keys
          .map((key) => S.cell(S.spans.column(key), S.spans.value(row, key)))
          .join('\n')
          .toLowerCase(),
      );
    }
    return searched;
  }

  function comparator(sort) {
    const up = sort.isDescending ? -1 : 1;
    const isText = S.spans.column(sort.key).type === 'text';
    return (a, b) => {
      const x = S.currentValue(a, sort.key);
      const y = S.currentValue(b, sort.key);
      if (x === y) {
        return 0;
      }
      // Empty cells come last whichever way: they say nothing of the order.
      if (x === null || Number.isNaN(x)) {
        return 1;
      }
      if (y === null || Number.isNaN(y)) {
        return -1;
      }
      return isText ? up * x.localeCompare(y, 'en', { numeric: true }) : up * (x - y);
    };
  }

  /** Returns the rows that are shown: in the order of the ranking, excluded ones after, unless a sort says otherwise. */
  S.visibleRows = (state) => {
    const tests = [...state.filters].map(([key, text]) => columnTest(key, text));
    if (state.search) {
      const texts = searchTexts();
      tests.push((row) => texts[row].includes(state.search));
    }
    if (state.hiddenClasses.size) {
      tests.push((row) => !state.hiddenClasses.has(S.classOf(state.ranks[row])));
    }
    const rows = [];
    const take = (row) => {
      if (tests.every((test) => test(row))) {
        rows.push(row);
      }
    };
    state.order.forEach(take);
    for (let row = 0; row < S.spans.rows; row++) {
      if (!state.ranks[row]) {
        take(row);
      }
    }
    return state.sort ? rows.sort(comparator(state.sort)) : rows;
  };
})(window.Spanroom);
