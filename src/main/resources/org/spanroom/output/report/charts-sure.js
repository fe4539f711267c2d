/** Charts of how certain the results are, and of what that depends on. */
(function (S) {
  'use strict';

  function uncertainty({ uncertainty: shares }) {
    if (!shares.length) {
      return null;
    }
    const rows = shares.map(([what, part]) => [what.replaceAll('_', ' '), part]);
    return S.figure({
      title: 'What the uncertainty of the top comes from',
      says:
        rows[0][0].charAt(0).toUpperCase() +
        rows[0][0].slice(1) +
        ' matters most (' +
        S.number(rows[0][1]) +
        ' % of what field checks are expected to change).',
      height: 60 + 40 * rows.length,
      option: () =>
        S.barsOption({ rows, unit: '% of the expected change', color: 'series-4', decimals: 0, labelWidth: 120 }),
      heads: ['What is not known', 'Share, %'],
      rows,
    });
  }

  function moneyRanges({ money_ranges: ranges }) {
    if (!ranges || !ranges.length) {
      return null;
    }
    const side = (place, name, color) => ({
      name,
      type: 'bar',
      stack: 'range',
      barMaxWidth: 22,
      color: S.color(color),
      data: ranges.map((range) => range[place]),
      label: {
        show: true,
        position: place === 1 ? 'left' : 'right',
        ...S.chartText('ink'),
        formatter: (item) => (item.value > 0 ? '+' : '') + S.number(item.value) + ' %',
      },
    });
    return S.figure({
      title: 'How far the sums may be off',
      says:
        'Relative to the likely value: ' +
        ranges.map(([what, low, high]) => what + ' ' + S.number(low) + ' % to +' + S.number(high) + ' %').join('; ') +
        '.',
      height: 80 + 44 * ranges.length,
      option: () => ({
        ...S.chartBase(),
        grid: { left: 8, right: 50, top: 30, bottom: 34, containLabel: true },
        legend: { top: 0, textStyle: S.chartText('ink') },
        xAxis: {
          ...S.axis('% of the likely value'),
          nameGap: 26,
          type: 'value',
          min: ({ min }) => 10 * Math.floor(min * 0.135),
          max: ({ max }) => 10 * Math.ceil(max * 0.125),
        },
        yAxis: {
          ...S.axis(''),
          type: 'category',
          inverse: true,
          data: ranges.map((range) => range[0]),
          axisLabel: S.chartText('ink'),
        },
        tooltip: {
          ...S.tip(),
          trigger: 'item',
          formatter: (item) => item.name + ', ' + item.seriesName + ': ' + S.number(item.value, 1) + ' %',
        },
        series: [side(1, 'low', 'series-1'), side(2, 'high', 'series-2')],
      }),
      heads: ['Sum', 'Low, %', 'High, %'],
      rows: ranges,
    });
  }

  function bands({ bands: found }) {
    if (!found || !found.rows.length) {
      return null;
    }
    const rows = found.rows.map(([band, spans]) => ['Band ' + band, spans]);
    return S.figure({
      title: 'Bands of the top',
      says:
        'Of the ' +
        S.number(rows.reduce((sum, [, spans]) => sum + spans, 0)) +
        ' best spans only, not of the whole run. Band 1 has ' +
        S.number(rows[0][1]) +
        (rows[0][1] === 1
          ? ' span.'
          : ' spans; the simulation does not separate these spans; use other criteria.'),
      height: 60 + 26 * rows.length,
      isWide: true,
      option: () => S.barsOption({ rows, unit: 'spans', color: 'series-2', labelWidth: 80 }),
      heads: ['Band', 'Spans', 'Its best span'],
      rows: found.rows.map(([band, spans, row]) => [
        'Band ' + band,
        spans,
        row === null || row < 0 ? '' : S.spans.value(row, 'span_id'),
      ]),
      note: 'From ' + S.number(found.draws) + ' draws.',
    });
  }

  S.sureCharts = (charts) => [uncertainty(charts), moneyRanges(charts), bands(charts)];
})(window.Spanroom);
