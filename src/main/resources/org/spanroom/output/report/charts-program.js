/** Charts of the annual program, where the page has one. */
(function (S) {
  'use strict';

  function years(totals) {
    return Array.from({ length: totals.rows }, (_, row) => totals.row(row)).filter(
      (row) => row.year !== null && !row.column,
    );
  }

  function byYear(program) {
    const rows = years(new S.Table(program.totals));
    if (!rows.length) {
      return null;
    }
    const positions = rows.reduce((sum, row) => sum + row.positions, 0);
    const whisker = (params, api) => {
      const at = (place) => api.coord([api.value(0), api.value(place)]);
      const [low, high] = [at(1), at(2)];
      const line = (x1, y1, x2, y2) =>
        [
          ['panel', 5],
          ['ink', 2],
        ].map(([color, lineWidth], z2) => ({
          type: 'line',
          z2,
          shape: { x1, y1, x2, y2 },
          style: { stroke: S.color(color), lineWidth },
        }));
      return {
        type: 'group',
        children: [
          line(low[0], low[1], high[0], high[1]),
          line(low[0] - 9, low[1], low[0] + 9, low[1]),
          line(high[0] - 9, high[1], high[0] + 9, high[1]),
        ].flat(),
      };
    };
    return S.figure({
      title: 'Program by year',
      says:
        S.number(positions) +
        ' positions in ' +
        rows.length +
        ' years. Bars are the likely cost, with a line from low to high; below each, the positions gained.',
      height: 300,
      option: () => ({
        ...S.chartBase(),
        grid: { left: 70, right: 16, top: 34, bottom: 48 },
        xAxis: {
          ...S.axis(''),
          type: 'category',
          data: rows.map((row) => 'Year ' + row.year + '\n+' + S.number(row.positions)),
          axisLabel: { ...S.chartText('ink'), lineHeight: 1.3 * S.textPixels(), interval: 0 },
        },
        yAxis: {
          ...S.axis('Cost (' + S.currency + ')'),
          nameLocation: 'end',
          nameGap: 14,
          type: 'value',
          axisLabel: { ...S.chartText('muted'), formatter: S.short },
        },
        tooltip: { ...S.tip(), trigger: 'item' },
        series: [
          {
            name: 'likely cost',
            type: 'bar',
            barMaxWidth: 70,
            data: rows.map((row, place) => ({
              value: row.cost_likely_money,
              itemStyle: { color: S.color(S.yearColor(place)) },
            })),
            tooltip: {
              formatter: (item) =>
                item.name +
                '\n' +
                S.money(item.value) +
                ' likely\n' +
                S.number(rows[item.dataIndex].positions) +
                ' positions',
            },
          },
          {
            type: 'custom',
            silent: true,
            renderItem: whisker,
            data: rows.map((row, place) => [place, row.cost_low_money, row.cost_high_money]),
            encode: { x: 0, y: [1, 2] },
            z: 5,
          },
        ],
      }),
      heads: [
        'Year',
        'Spans',
        'Positions',
        'Low, ' + S.currency,
        'Likely, ' + S.currency,
        'High, ' + S.currency,
        'Hours on site',
      ],
      rows: rows.map((row) => [
        'Year ' + row.year,
        row.spans,
        row.positions,
        row.cost_low_money,
        row.cost_likely_money,
        row.cost_high_money,
        row.site_hours,
      ]),
    });
  }

  function budgets(program) {
    const curve = new S.Table(program.curve);
    if (!curve.rows) {
      return null;
    }
    const rows = Array.from({ length: curve.rows }, (_, row) => curve.row(row));
    const now = rows.find((row) => row.budget_pct === 100) || rows[rows.length - 1];
    return S.figure({
      title: 'What other budgets buy',
      says:
        'Plans by year, before work is put into weeks of crews, which takes some of it out again: the budget of ' +
        S.money(now.budget_money) +
        ' buys ' +
        S.number(now.positions) +
        ' positions' +
        (now.connections ? ' and ' + S.number(now.connections) + ' connections' : '') +
        (now.marginal_money_per_position
          ? '; the next position costs ' + S.money(now.marginal_money_per_position)
          : '') +
        '.',
      height: 300,
      option: () => ({
        ...S.chartBase(),
        grid: { left: 56, right: 24, top: 34, bottom: 48 },
        xAxis: {
          ...S.axis('Budget of all years (' + S.currency + ')'),
          type: 'value',
          axisLabel: { ...S.chartText('muted'), formatter: S.short },
        },
        yAxis: {
          ...S.axis('Positions gained'),
          nameLocation: 'end',
          nameGap: 14,
          nameTextStyle: { ...S.chartText('muted'), align: 'left' },
          type: 'value',
        },
        tooltip: {
          ...S.tip(),
          trigger: 'item',
          formatter: ({ dataIndex }) =>
            S.number(rows[dataIndex].budget_pct) +
            ' % of the budget, ' +
            S.money(rows[dataIndex].budget_money) +
            '\n' +
            S.number(rows[dataIndex].positions) +
            ' positions, ' +
            S.number(rows[dataIndex].connections) +
            ' connections',
        },
        series: [
          {
            type: 'line',
            symbolSize: (value) => (value[2] === 100 ? 13 : 8),
            color: S.color('series-1'),
            lineStyle: { width: 2.5 },
            data: rows.map((row) => [row.budget_money, row.positions, row.budget_pct]),
            label: {
              show: true,
              position: 'top',
              ...S.chartText('ink'),
              formatter: ({ value }) => (value[2] === 100 ? 'this budget' : ''),
            },
          },
        ],
      }),
      heads: [
        'Budget, %',
        'Budget, ' + S.currency,
        'Spent, ' + S.currency,
        'Positions',
        'Connections',
        'Next position, ' + S.currency,
      ],
      rows: rows.map((row) => [
        S.number(row.budget_pct) + ' %',
        row.budget_money,
        row.spent_money,
        row.positions,
        row.connections,
        row.marginal_money_per_position,
      ]),
    });
  }

  S.programCharts = () =>
    S.data.program ? [byYear(S.data.program), budgets(S.data.program), S.connectionsPanel(S.data.program)] : [];
})(window.Spanroom);
