/** How cells are written for people: keys as words, numbers with their decimals. */
(function (S) {
  'use strict';

  /** Columns that hold keys, and the list of words that explains them. */
  const WORDS = {
    exclusion: 'exclusion',
    reasons: 'exclusion',
    cautions: 'caution',
    pull_outcome: 'pull_outcome',
    binding_rule: 'binding_rule',
  };

  /** Columns that hold keys that read as words once their underlines are spaces. */
  const KEYS =
    /^(zone_kinds|recovery_needs|permits|crew_permits|contents_source|pull_tightest_limit|assumed|severity|condition|unknown)$/;

  /** Which column shows the quantity that a criterion judges. */
  const QUANTITIES = {
    room_gained: 'positions_gained',
    shortage: 'positions_now',
    ease_pull: 'pull_utilization_pct',
    ease_bends: 'bend_total_deg',
    ease_water: 'ease_water_places',
    ease_access: 'ease_access_drawbacks',
    saving: 'saving_ratio',
    permits_avoided: 'permits_avoided_count',
    knowledge: 'knowledge_pct',
    length: 'length_m',
  };

  S.quantityColumn = (criterion) => criterion.column || QUANTITIES[criterion.key];

  /** The words for one key of a column. */
  S.word = (columnKey, key) => {
    const list = S.data.words[WORDS[columnKey] || columnKey];
    return (list && list[key]) || key.replaceAll('_', ' ');
  };

  /** All words of a cell that holds several keys. */
  S.wordsOf = (columnKey, cell) =>
    cell
      ? cell
          .split(';')
          .filter(Boolean)
          .map((key) => S.word(columnKey, key))
      : [];

  /** A cell as people read it. */
  S.cell = (column, value) => {
    if (value === null || value === undefined) {
      return '';
    }
    if (column.type === 'flag') {
      return value ? 'yes' : 'no';
    }
    if (column.type === 'text') {
      return WORDS[column.key] || KEYS.test(column.key) ? S.wordsOf(column.key, value).join('; ') : String(value);
    }
    if (/year/.test(column.key)) {
      return String(value);
    }
    const rough = /_money$/.test(column.key) ? 0 : column.decimals;
    return S.number(value, Math.min(rough, 2));
  };

  /** The label as a heading, with its unit. */
  S.heading = (column) => {
    const label = S.columnLabel(column);
    return column.unit ? label + ' (' + column.unit + ')' : label;
  };

  /** A value of a span with its unit, for cards. */
  S.spanText = (row, key) => {
    const column = S.spans.column(S.unitKey(key));
    const value = column && S.spans.value(row, column.key);
    if (value === null || value === undefined) {
      return '';
    }
    const unit = column.unit || '';
    const text = S.cell(column, value);
    return !unit || column.type === 'text' ? text : text + (unit === '°' ? '' : ' ') + unit;
  };

  /**
   * The column for a quantity in the units of the page: a page in US units has a twin of each metric column, of the same name with
   * another unit at its end.
   */
  S.unitKey = (key) => {
    if (S.data.lengthUnit === 'ft') {
      const twin = key.replace(/_m$/, '_ft').replace(/_mm$/, '_in').replace(/_kg$/, '_lb');
      return S.spans.has(twin) ? twin : key;
    }
    return key;
  };
})(window.Spanroom);
