/** Charts of the run: who gains, what it costs, why spans are out, how certain the ranking is. */
(function (S) {
  'use strict';

  const share = (part, all) => S.number((100 * part) / all) + ' %';

  function byDistrict({ by_district: groups }) {
    const { rows } = groups;
    if (!rows.length) {
      return null;
    }
    const shown = rows.length > 12 ? [...rows.slice(0, 11), rest(rows.slice(11))] : rows;
    const all = rows.reduce((sum, row) => sum + row[1], 0);
    const field = groups.field.replace(/^src_/, '').replaceAll('_', ' ');
    return S.figure({
      title: 'Positions gained by ' + field,
      says:
        rows[0][0] +
        ' gains most: ' +
        S.number(rows[0][1]) +
        ' of ' +
        S.number(all) +
        ' positions (' +
        share(rows[0][1], all) +
        ').',
      height: 70 + 34 * shown.length,
      option: () => S.barsOption({ rows: shown, unit: 'positions', color: 'series-1' }),
      heads: [field, 'Positions', 'Spans', 'Recovery, ' + S.currency],
      rows,
      onClick: (item) => groups.field && S.spans.has(groups.field) && filterBy(groups.field, item.name),
    });
  }

  const rest = (rows) => ['all others', ...[1, 2, 3].map((place) => rows.reduce((sum, row) => sum + row[place], 0))];

  function filterBy(key, text) {
    S.setFilter(key, text);
    if (!S.grid.columns.some((column) => column.key === key)) {
      S.setColumns([...S.grid.columns.map((column) => column.key), key]);
    }
    S.byId('table').scrollIntoView({ behavior: S.prefersLessMotion() ? 'auto' : 'smooth' });
    S.announce('The table shows ' + S.live.rows.length + ' spans');
  }

  /** Above its limit a page has a point for each span that it shows, not for each of the run. */
  function onlyShown() {
    const { ranked, shownSpans, spans } = S.data.counts;
    return shownSpans < spans ? 'Of the ' + S.number(Math.min(ranked, shownSpans)) + ' ranked spans that this page shows. ' : '';
  }

  function frontier({ frontier: { points, hull } }) {
    if (!points.length) {
      return null;
    }
    const edge = hull.map((place) => points[place]);
    const id = (point) => S.spans.value(point[2], 'span_id');
    const last = edge[edge.length - 1];
    return S.figure({
      title: 'Cost and positions of each span',
      says:
        edge.length === 1
          ? 'One span is efficient: no mix of other spans gives more positions for the money. It gains ' +
            S.number(last[1]) +
            ' positions for ' +
            S.money(last[0]) +
            '.'
          : S.number(edge.length) +
            ' spans are efficient: no mix of other spans gives more positions for the money. They range from ' +
            S.number(edge[0][1]) +
            ' positions for ' +
            S.money(edge[0][0]) +
            ' to ' +
            S.number(last[1]) +
            ' for ' +
            S.money(last[0]) +
            '.',
      height: 340,
      option: () => ({
        ...S.chartBase(),
        grid: { left: 52, right: 24, top: 34, bottom: 50 },
        legend: { top: 0, textStyle: S.chartText('ink') },
        xAxis: {
          ...S.axis('Likely recovery cost (' + S.currency + ')'),
          type: 'value',
          scale: true,
          axisLabel: { ...S.chartText('muted'), formatter: S.short },
        },
        yAxis: { ...S.axis('Positions gained'), type: 'value', nameGap: 34 },
        tooltip: {
          ...S.tip(),
          trigger: 'item',
          formatter: ({ value }) => id(value) + '\n' + S.number(value[1]) + ' positions for ' + S.money(value[0]),
        },
        series: [
          {
            name: 'Spans',
            type: 'scatter',
            symbolSize: 6,
            data: points,
            itemStyle: { opacity: 0.4 },
            color: S.color('series-1'),
            large: points.length > 5000,
          },
          {
            name: 'Efficient',
            type: 'line',
            data: edge,
            symbolSize: 9,
            color: S.color('series-2'),
            lineStyle: { width: 2 },
          },
        ],
      }),
      heads: ['Efficient span', 'Likely cost, ' + S.currency, 'Positions'],
      rows: edge.map((point) => [id(point), point[0], point[1]]),
      onClick: ({ value }) => S.select(value[2], { from: 'chart' }),
      note: onlyShown() + 'Choose a point to open its span.',
    });
  }

  function exclusions({ exclusions: reasons }) {
    if (!reasons.length) {
      return null;
    }
    const rows = reasons.map(([, spans, text]) => [text, spans]);
    const all = rows.reduce((sum, row) => sum + row[1], 0);
    return S.figure({
      title: 'Why spans are excluded',
      says:
        S.number(all) +
        ' of ' +
        S.number(S.data.counts.spans) +
        ' spans are excluded. The most frequent reason: ' +
        rows[0][0] +
        ' (' +
        S.number(rows[0][1]) +
        ').',
      height: 60 + 33 * rows.length,
      isWide: true,
      option: (width) =>
        S.barsOption({
          rows,
          unit: 'spans',
          color: 'series-3',
          labelWidth: Math.min(0.45 * width, 36 * S.textPixels()),
        }),
      heads: ['Reason', 'Spans'],
      rows,
      onClick: (item) => filterBy('exclusion', item.name),
      note: 'Each span counts once, by its most basic reason. Choose a bar to see its spans in the table.',
    });
  }

  S.startCharts = () => {
    const { charts } = S.data;
    S.put(
      S.byId('chart-list'),
      S.programCharts(),
      byDistrict(charts),
      frontier(charts),
      S.sureCharts(charts),
      exclusions(charts),
    );
    S.on('theme', S.redrawCharts);
  };
})(window.Spanroom);
