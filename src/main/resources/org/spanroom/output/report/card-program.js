/** What the annual program does with a span, and which spans lie beside it. */
(function (S) {
  'use strict';

  const ITEM = [
    'year',
    'week',
    'crew',
    'first_day',
    'last_day',
    'night',
    'budget_money',
    'positions',
    'connections',
    'permits',
    'crew_permits',
    'apply_by',
    'field_check',
    'check_by',
    'chosen_chance_pct',
    'why',
  ];
  const RESERVE = ['place', 'why_not', 'worth_money', 'chosen_chance_pct'];

  const NAMES = {
    year: 'Year',
    week: 'Week from',
    crew: 'Crew',
    first_day: 'First day',
    last_day: 'Last day',
    night: 'At night',
    budget_money: 'Takes of the budget',
    positions: 'Positions',
    connections: 'For connections',
    permits: 'Permits to apply for',
    crew_permits: 'The crew issues on the day',
    apply_by: 'Apply by',
    field_check: 'Field check first',
    check_by: 'Check by',
    chosen_chance_pct: 'Chosen in draws',
    why: 'Why',
    place: 'Place in the reserve',
    why_not: 'Why not chosen',
    worth_money: 'Worth',
  };

  let tables = null;

  function find(row) {
    if (!tables) {
      const { items, reserve } = S.data.program;
      tables = [
        [items, ITEM],
        [reserve, RESERVE],
      ]
        .filter(([raw]) => raw)
        .map(([raw, keys]) => ({ raw, keys, table: new S.Table(raw) }));
    }
    for (const known of tables) {
      const place = known.raw.row.indexOf(row);
      if (place >= 0) {
        return { ...known, place };
      }
    }
    return null;
  }

  /** The span's line of the program or of its reserve; null where it has none. */
  S.programPart = (row) => {
    const found = S.data.program && find(row);
    return found
      ? S.el(
          'dl',
          { class: 'pairs' },
          found.keys
            .filter((key) => found.table.has(key))
            .map((key) => {
              const column = found.table.column(key);
              const text = S.cell(column, found.table.value(found.place, key));
              const unit = column.unit && column.type !== 'text' ? ' ' + column.unit : '';
              return text === '' ? null : S.el('div', {}, S.el('dt', {}, NAMES[key]), S.el('dd', {}, text + unit));
            }),
        )
      : null;
  };

  /** The other spans of the section; null for a span that is alone. */
  S.besidePart = (row) => {
    const section = S.spans.raw.section[row];
    const others =
      section === null || section === undefined ? [] : S.data.sections.spans[section].filter((other) => other !== row);
    return others.length
      ? S.el(
          'ul',
          {},
          others.map((other) =>
            S.el(
              'li',
              {},
              S.el(
                'button',
                {
                  type: 'button',
                  class: 'link',
                  on: { click: () => S.select(other, { from: 'beside' }) },
                },
                S.spans.value(other, 'span_id'),
              ),
              ' ',
              S.el(
                'span',
                { class: 'muted' },
                S.live.ranks[other]
                  ? 'rank ' +
                      S.number(S.live.ranks[other]) +
                      ', +' +
                      S.spans.value(other, 'positions_gained') +
                      ' positions'
                  : S.word('exclusion', S.spans.value(other, 'exclusion') || 'excluded'),
              ),
            ),
          ),
        )
      : null;
  };
})(window.Spanroom);
