/** What all charts share: a frame with a sentence and a table of the same figures, colors of the page, and drawing once they are in view. */
(function (S) {
  'use strict';

  const drawn = new Map();

  S.chartBase = () => ({
    animation: false,
    textStyle: { fontFamily: 'system-ui, sans-serif', fontSize: S.textPixels() },
    color: ['series-1', 'series-2', 'series-3', 'series-4'].map(S.color),
  });

  S.axis = (name) => ({
    name,
    nameLocation: 'middle',
    nameGap: 30,
    nameTextStyle: S.chartText('muted'),
    axisLine: { lineStyle: { color: S.color('rule-strong') } },
    axisLabel: S.chartText('muted'),
    splitLine: { lineStyle: { color: S.color('rule') } },
  });

  /** Tips are drawn, not made of HTML, so that no name in them can be markup. */
  S.tip = () => ({
    renderMode: 'richText',
    confine: true,
    backgroundColor: S.color('panel'),
    borderColor: S.color('rule-strong'),
    textStyle: S.chartText('ink'),
  });

  /** Draws into an element, and again whenever the page turns dark or light or the element changes its size. */
  S.drawChart = (element, option) => {
    for (const [other, known] of drawn) {
      if (!other.isConnected) {
        known.chart.dispose();
        known.watcher.disconnect();
        drawn.delete(other);
      }
    }
    if (!drawn.has(element)) {
      const chart = echarts.init(element, null, { renderer: 'svg' });
      const watcher = new ResizeObserver(S.oncePerFrame(() => element.isConnected && resize(element)));
      watcher.observe(element);
      drawn.set(element, { chart, watcher });
    }
    const known = drawn.get(element);
    known.option = option;
    known.chart.setOption(option(element.clientWidth), true);
    return known.chart;
  };

  function resize(element) {
    const { chart, option } = drawn.get(element);
    chart.resize();
    chart.setOption(option(element.clientWidth), true);
  }

  S.redrawCharts = () => [...drawn.keys()].forEach(resize);

  const waiting = new Map();
  const inView = new IntersectionObserver(
    (entries) => entries.filter((entry) => entry.isIntersecting).forEach((entry) => drawNow(entry.target)),
    { rootMargin: '200px' },
  );

  function drawNow(element) {
    inView.unobserve(element);
    const draw = waiting.get(element);
    waiting.delete(element);
    if (draw) {
      draw();
    }
  }

  /** Draws what has not been in view yet, for printing. */
  S.drawAllCharts = () => [...waiting.keys()].forEach(drawNow);

  /**
   * A chart with its words.
   *
   * @param {{title: string, says: string, height?: number, option: function, heads: string[], rows: Array[], onClick?: function, note?: string, isWide?: boolean}} chart
   */
  S.figure = (chart) => {
    const canvas = S.el('div', {
      class: 'chart',
      role: 'img',
      'aria-label': chart.title + '. ' + chart.says,
      style: { height: (chart.height || 280) / 16 + 'rem' },
    });
    waiting.set(canvas, () => {
      const made = S.drawChart(canvas, chart.option);
      if (chart.onClick) {
        made.on('click', chart.onClick);
      }
    });
    inView.observe(canvas);
    return S.el(
      'figure',
      { class: 'panel chart-panel' + (chart.isWide ? ' wide' : '') },
      S.el('h3', {}, chart.title),
      S.el('p', { class: 'says' }, chart.says),
      canvas,
      chart.note ? S.el('p', { class: 'note' }, chart.note) : null,
      figures(chart),
    );
  };

  function figures({ title, heads, rows }) {
    const cell = (value, place) =>
      S.el(
        place ? 'td' : 'th',
        place ? { class: typeof value === 'number' ? 'number' : '' } : { scope: 'row' },
        typeof value === 'number' ? S.number(value, Number.isInteger(value) || Math.abs(value) >= 1000 ? 0 : 1) : value,
      );
    return S.el(
      'details',
      { class: 'figures-table' },
      S.el('summary', {}, 'Figures of this chart'),
      S.el(
        'div',
        { class: 'scroll-x', tabindex: 0, role: 'region', 'aria-label': 'Figures: ' + title },
        S.el(
          'table',
          { class: 'plain' },
          S.el(
            'thead',
            {},
            S.el(
              'tr',
              {},
              heads.map((head) => S.el('th', { scope: 'col' }, head)),
            ),
          ),
          S.el(
            'tbody',
            {},
            rows.map((row) => S.el('tr', {}, row.map(cell))),
          ),
        ),
      ),
    );
  }

  /** Horizontal bars, the first row at the top, with their values at the ends. */
  S.barsOption = ({ rows, unit, color, decimals = 0, labelWidth = 12 * S.textPixels() }) => ({
    ...S.chartBase(),
    grid: { left: 8, right: 56, top: 6, bottom: 30, containLabel: true },
    xAxis: { ...S.axis(unit), nameGap: 26, type: 'value', axisLabel: { ...S.chartText('muted'), formatter: S.short } },
    yAxis: {
      ...S.axis(''),
      type: 'category',
      inverse: true,
      data: rows.map((row) => row[0]),
      axisTick: { show: false },
      axisLabel: {
        ...S.chartText('ink'),
        width: labelWidth,
        overflow: 'break',
        lineHeight: 1.2 * S.textPixels(),
        interval: 0,
      },
    },
    tooltip: {
      ...S.tip(),
      trigger: 'item',
      formatter: (item) => item.name + '\n' + S.number(item.value, decimals) + ' ' + unit,
    },
    series: [
      {
        type: 'bar',
        data: rows.map((row) => row[1]),
        color: S.color(color),
        barMaxWidth: 22,
        label: {
          show: true,
          position: 'right',
          ...S.chartText('ink'),
          formatter: (item) => S.number(item.value, decimals),
        },
      },
    ],
  });
})(window.Spanroom);
