/**
 * What the page shows at the moment. The panels change it through the functions here and listen to what changed; none knows another.
 *
 * Topics: `ranks` (weights), `rows` (which spans, in which order), `selected` (the span of the card), `hover`, `layers`, `theme`.
 */
(function (S) {
  'use strict';

  const listeners = new Map();
  const state = {
    weights: [],
    runWeights: [],
    points: null,
    ranks: null,
    order: [],
    runRanks: null,
    rows: [],
    isShown: null,
    filters: new Map(),
    search: '',
    sort: null,
    hiddenClasses: new Set(),
    selected: null,
    hover: null,
  };

  S.on = (topic, listener) => {
    listeners.set(topic, [...(listeners.get(topic) || []), listener]);
  };

  S.fire = (topic) => (listeners.get(topic) || []).forEach((listener) => listener());

  S.live = state;

  /** Takes over the data of the page. */
  S.startState = (data) => {
    const rows = S.spans.rows;
    state.runRanks = Int32Array.from({ length: rows }, (_, row) => S.spans.value(row, 'rank') || 0);
    state.values = data.score.values.map(S.decodeDoubles);
    state.runWeights = data.score.criteria.map((criterion) => criterion.weight);
    state.weights = [...state.runWeights];
    takeRun();
    applyFilters();
  };

  /** The ranking of the run itself, which may have spans that the page does not. */
  function takeRun() {
    const rows = S.spans.rows;
    state.ranks = state.runRanks;
    state.points = Float64Array.from({ length: rows }, (_, row) => S.spans.value(row, 'score_points') ?? NaN);
    state.order = Array.from({ length: rows }, (_, row) => row)
      .filter((row) => state.ranks[row] > 0)
      .sort((a, b) => state.ranks[a] - state.ranks[b]);
  }

  S.hasOtherWeights = () => state.weights.some((weight, place) => weight !== state.runWeights[place]);

  /** Ranks by other weights; by the run's own the run's ranks come back as they were. */
  S.setWeights = (weights) => {
    state.weights = weights;
    if (!S.hasOtherWeights() || weights.every((weight) => weight === 0)) {
      takeRun();
    } else {
      state.points = S.pointsByWeights(state.values, weights, S.spans.rows);
      const found = S.rankBy(
        state.points,
        (row) => state.runRanks[row] > 0,
        (row) => S.spans.value(row, 'span_id'),
      );
      state.order = found.order;
      state.ranks = found.ranks;
    }
    S.fire('ranks');
    applyFilters();
  };

  S.setFilter = (key, text) => {
    if (text.trim()) {
      state.filters.set(key, text);
    } else {
      state.filters.delete(key);
    }
    applyFilters();
  };

  S.setSearch = (text) => {
    state.search = text.trim().toLowerCase();
    applyFilters();
  };

  S.showClass = (place, isShown) => {
    if (isShown) {
      state.hiddenClasses.delete(place);
    } else {
      state.hiddenClasses.add(place);
    }
    applyFilters();
  };

  S.clearFilters = () => {
    state.filters.clear();
    state.search = '';
    state.hiddenClasses.clear();
    applyFilters();
    S.fire('cleared');
  };

  /** @param {?{key: string, isDescending: boolean}} sort null for the order of the ranking */
  S.setSort = (sort) => {
    state.sort = sort;
    applyFilters();
  };

  function applyFilters() {
    state.rows = S.visibleRows(state);
    state.isShown = new Uint8Array(S.spans.rows);
    state.rows.forEach((row) => {
      state.isShown[row] = 1;
    });
    S.fire('rows');
  }

  S.select = (row, options) => {
    state.selected = row;
    state.selectOptions = options || {};
    S.fire('selected');
  };

  S.hoverOver = (row) => {
    if (state.hover !== row) {
      state.hover = row;
      S.fire('hover');
    }
  };

  /** For tests and for others who look at the page from outside: nothing can be changed through it. */
  S.state = Object.freeze({
    get rowsShown() {
      return [...state.rows];
    },
    get ranks() {
      return Array.from(state.ranks);
    },
    get points() {
      return Array.from(state.points);
    },
    get weights() {
      return [...state.weights];
    },
    get selected() {
      return state.selected;
    },
    get hasOtherWeights() {
      return S.hasOtherWeights();
    },
  });
})(window.Spanroom);
