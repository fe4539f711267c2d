/** Both forces along a span while an innerduct is pulled out, with their limits. */
(function (S) {
  'use strict';

  const most = (values) => Math.max(...values.filter((value) => value !== null));

  /** How much of a limit is used, in words. */
  function used(value, limit) {
    return (
      S.number(value) +
      ' of ' +
      S.number(limit) +
      ' ' +
      S.data.forceUnit +
      ' allowed (' +
      S.number((100 * value) / limit) +
      ' %' +
      (value > limit ? ', too much)' : ')')
    );
  }

  function option(pull, ends) {
    const limit = (value, color) => ({
      silent: true,
      symbol: 'none',
      lineStyle: { color: S.color(color), type: 'dashed', width: 1.5 },
      label: { formatter: 'limit ' + S.number(value), position: 'insideStartTop', ...S.chartText('ink') },
      data: [{ yAxis: value }],
    });
    const line = (name, values, allowed, color) => ({
      name,
      type: 'line',
      showSymbol: false,
      lineStyle: { width: 2.5 },
      color: S.color(color),
      data: pull.at.map((at, place) => [at, values[place]]),
      markLine: limit(allowed, color),
    });
    const top = Math.max(most(pull.pull), most(pull.hold), pull.allowed_pull, pull.allowed_hold);
    return {
      ...S.chartBase(),
      grid: { left: 58, right: 18, top: 34, bottom: 52 },
      legend: { top: 0, right: 0, textStyle: S.chartText('ink'), itemHeight: 8 },
      xAxis: {
        ...S.axis('Distance from A, ' + ends[0] + ' (' + S.data.lengthUnit + '); B is ' + ends[1]),
        type: 'value',
        max: Math.max(...pull.at),
        axisLabel: { ...S.chartText('muted'), formatter: (value) => S.number(value), hideOverlap: true },
      },
      yAxis: {
        ...S.axis('Force (' + S.data.forceUnit + ')'),
        nameLocation: 'end',
        nameGap: 12,
        nameTextStyle: { ...S.chartText('muted'), align: 'left' },
        type: 'value',
        max: Math.ceil((top * 1.12) / 100) * 100,
      },
      tooltip: {
        ...S.tip(),
        trigger: 'axis',
        formatter: (items) =>
          S.number(items[0].value[0], 1) +
          ' ' +
          S.data.lengthUnit +
          ' from A\n' +
          items.map((item) => item.seriesName + ': ' + S.number(item.value[1]) + ' ' + S.data.forceUnit).join('\n'),
      },
      series: [
        line('Pull on the innerduct', pull.pull, pull.allowed_pull, 'series-1'),
        line('Hold on the cables', pull.hold, pull.allowed_hold, 'series-2'),
      ],
    };
  }

  /** The part of the card; null where nothing is pulled. */
  S.forcesPart = (pulls, row) => {
    if (!pulls || !pulls.length) {
      return null;
    }
    const ends = [S.spans.value(row, 'vault_a'), S.spans.value(row, 'vault_b')];
    const chart = S.el('div', { class: 'chart small', role: 'img' });
    const words = S.el('p', { role: 'status' });
    const show = (pull) => {
      const texts = [
        'Steady pull: at most ' + used(most(pull.pull), pull.allowed_pull),
        'hold: at most ' + used(most(pull.hold), pull.allowed_hold),
      ];
      words.textContent = texts.join('; ') + '.';
      chart.setAttribute('aria-label', 'Forces along the span. ' + words.textContent);
      S.drawChart(chart, () => option(pull, ends));
    };
    const best = Math.max(
      0,
      pulls.findIndex((pull) => pull.better),
    );
    const choice = S.el(
      'select',
      { on: { change: () => show(pulls[choice.value]) } },
      pulls.map((pull, place) =>
        S.el(
          'option',
          {
            value: place,
            selected: place === best,
          },
          pull.innerduct +
            ' pulled at ' +
            (pull.pulling_vault === ends[0] ? 'A, ' : pull.pulling_vault === ends[1] ? 'B, ' : '') +
            pull.pulling_vault +
            (pull.better ? ' (better end)' : ''),
        ),
      ),
    );
    return {
      nodes: [
        S.el('label', { class: 'field' }, 'Pull ', choice),
        words,
        chart,
        S.el(
          'p',
          { class: 'note' },
          'Forces of a steady pull. A limit that has to hold at breakaway is drawn divided by the breakaway factor, so the share used is that of the calculation. ' +
            'Both forces are uncertain by a factor of two: they rank and warn, they do not authorize a pull.',
        ),
      ],
      start: () => show(pulls[best]),
    };
  };
})(window.Spanroom);
