/** What if the criteria had other weights: sliders, and what that does to the top. */
(function (S) {
  'use strict';

  const TOP = 20;
  const SHOWN = 10;
  let sliders = [];

  function slider(criterion, place, most) {
    const id = 'weight-' + criterion.key;
    const input = S.el('input', {
      type: 'range',
      id,
      min: 0,
      max: most,
      step: most / 100,
      value: criterion.weight,
      'aria-describedby': id + '-share',
      on: { input: S.oncePerFrame(change) },
    });
    sliders[place] = {
      input,
      share: S.el('output', { id: id + '-share', for: id, class: 'share' }),
      run: criterion.weight,
    };
    return S.el(
      'div',
      { class: 'slider' },
      S.el('label', { for: id }, S.criterionLabel(criterion)),
      input,
      sliders[place].share,
    );
  }

  /** The run's own weight is kept to the last digit, where a slider would round it to its steps. */
  function readWeights() {
    return sliders.map(({ input, run }) => {
      const step = Number(input.step);
      const value = Number(Number(input.value).toPrecision(12));
      return Math.abs(value - run) < step / 2 ? run : value;
    });
  }

  function change() {
    const weights = readWeights();
    if (weights.every((weight) => weight === 0)) {
      S.put(
        S.byId('whatif-result'),
        S.el('p', {}, 'All weights are 0, so nothing is left to rank by. The table shows the ranking of the run.'),
      );
    }
    S.setWeights(weights);
  }

  function reset() {
    sliders.forEach(({ input, run }) => {
      input.value = run;
    });
    S.setWeights([...S.live.runWeights]);
    S.announce('The weights of the run are back');
  }

  function top(ranks, count) {
    const rows = [];
    ranks.forEach((rank, row) => {
      if (rank > 0) {
        rows.push([rank, row]);
      }
    });
    return rows
      .sort((a, b) => a[0] - b[0])
      .slice(0, count)
      .map((pair) => pair[1]);
  }

  function topLine(row) {
    const [now, was] = [S.live.ranks[row], S.live.runRanks[row]];
    const moved = was - now;
    return S.el(
      'li',
      {},
      S.el(
        'button',
        { type: 'button', class: 'link', on: { click: () => S.select(row, { from: 'whatif' }) } },
        S.spans.value(row, 'span_id'),
      ),
      ' ',
      S.el(
        'span',
        { class: 'muted' },
        S.number(S.live.points[row], 1) +
          ' points, +' +
          S.spans.value(row, 'positions_gained') +
          ' positions' +
          (moved ? ', ' + (moved > 0 ? 'up ' : 'down ') + S.number(Math.abs(moved)) + ' from ' + S.number(was) : ''),
      ),
    );
  }

  function showResult() {
    const isOther = S.hasOtherWeights();
    const before = new Set(top(S.live.runRanks, TOP));
    const now = top(S.live.ranks, TOP);
    const changed = now.filter((row) => !before.has(row)).length;
    if (!now.length) {
      S.put(S.byId('whatif-result'), S.el('p', {}, 'No span is ranked, so there is no order to change.'));
      return;
    }
    S.put(
      S.byId('whatif-result'),
      S.el(
        'p',
        { class: 'big' },
        isOther ? changed + ' of the top ' + now.length + ' changed' : 'The weights of the run',
      ),
      S.el('h3', {}, 'The top ' + Math.min(SHOWN, now.length) + (isOther ? ' with these weights' : '')),
      S.el('ol', { class: 'top-list' }, now.slice(0, SHOWN).map(topLine)),
    );
  }

  function show() {
    const isOther = S.hasOtherWeights();
    const shares = S.weightShares(S.live.weights);
    sliders.forEach(({ share, input }, place) => {
      share.textContent = S.number(100 * shares[place]) + ' %';
      input.classList.toggle('changed', S.live.weights[place] !== S.live.runWeights[place]);
      input.setAttribute('aria-valuetext', S.number(100 * shares[place]) + ' percent of all weights');
    });
    document.body.classList.toggle('other-weights', isOther);
    document.querySelectorAll('[data-weights-mark]').forEach((mark) => {
      mark.hidden = !isOther;
    });
    S.byId('scoring-text').value = S.scoringYaml(S.data.score.criteria, S.live.weights);
    if (S.live.weights.some((weight) => weight > 0)) {
      showResult();
    }
  }

  async function copy() {
    const text = S.byId('scoring-text');
    try {
      await navigator.clipboard.writeText(text.value);
      S.byId('copy-state').textContent =
        'Copied. Save it as scoring.yaml and name it with the key scoring of the config.';
    } catch (refused) {
      // A page opened from a file may not be allowed to write the clipboard; then the text is there to be copied by hand.
      S.byId('scoring-details').open = true;
      text.focus();
      text.select();
      S.byId('copy-state').textContent =
        'The browser does not allow it from here. The text is selected: copy it with Ctrl+C.';
    }
  }

  S.startWhatIf = () => {
    const { criteria } = S.data.score;
    const most = Math.max(...criteria.map((criterion) => criterion.weight)) * 2 || 1;
    sliders = [];
    S.put(
      S.byId('sliders'),
      criteria.map((criterion, place) => slider(criterion, place, most)),
    );
    document.querySelectorAll('[data-reset-weights]').forEach((button) => button.addEventListener('click', reset));
    S.byId('copy-scoring').addEventListener('click', copy);
    const { ranked, spans, shownSpans } = S.data.counts;
    S.byId('whatif-part').hidden = shownSpans >= spans;
    S.byId('whatif-part').textContent =
      'This page has ' +
      S.number(shownSpans) +
      ' of ' +
      S.number(spans) +
      ' spans (' +
      S.number(ranked) +
      ' are ranked). Other weights rank only those that it has: a span that is left out here might come to the top.';
    S.on('ranks', show);
    show();
  };
})(window.Spanroom);
