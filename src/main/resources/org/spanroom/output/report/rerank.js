/**
 * Ranks with other weights, by the arithmetic of the program: a score is the sum, in the order of the criteria, of
 * 100 x value x share of the weight; equal scores are in order of span id; excluded spans follow. Nothing else is calculated again.
 */
(function (S) {
  'use strict';

  /** Adds as the program does, carrying the lost low bits along, since the shares are divided by this sum. */
  function sum(values) {
    let high = 0;
    let lost = 0;
    let simple = 0;
    for (const value of values) {
      const add = value - lost;
      const total = high + add;
      lost = total - high - add;
      high = total;
      simple += value;
    }
    const exact = high - lost;
    return Number.isNaN(exact) && !Number.isFinite(simple) ? simple : exact;
  }

  /** Returns each criterion's share of all weights, 0 for those that are off. */
  S.weightShares = (weights) => {
    const all = sum(weights);
    return weights.map((weight) => (weight > 0 && all > 0 ? weight / all : 0));
  };

  /** Returns the points of every span. */
  S.pointsByWeights = (values, weights, rows) => {
    const shares = S.weightShares(weights);
    const points = new Float64Array(rows);
    shares.forEach((share, criterion) => {
      if (share > 0) {
        const ratios = values[criterion];
        for (let row = 0; row < rows; row++) {
          points[row] += 100 * ratios[row] * share;
        }
      }
    });
    return points;
  };

  /**
   * Returns rows, the best first, and their ranks.
   *
   * @param {Float64Array} points of each row; one that is not a number stands as 0, as in the program
   * @param {(row: number) => boolean} isRanked
   * @param {(row: number) => string} id
   */
  S.rankBy = (points, isRanked, id) => {
    const ranked = [];
    for (let row = 0; row < points.length; row++) {
      if (isRanked(row)) {
        ranked.push(row);
      }
    }
    const known = (row) => (Number.isNaN(points[row]) ? 0 : points[row]);
    // Texts are compared by their code units, as in the program, not by a language's alphabet.
    ranked.sort((a, b) => known(b) - known(a) || (id(a) < id(b) ? -1 : 1));
    const ranks = new Int32Array(points.length);
    ranked.forEach((row, place) => {
      ranks[row] = place + 1;
    });
    return { order: ranked, ranks };
  };

  /** Returns a scoring for the program, with these weights and the run's curves. */
  S.scoringYaml = (criteria, weights) => {
    const lines = [
      '# Weights tried in the report of a run; the curves are those of the run. What is not here has the shipped values:',
      '# add gates and others of your own scoring, if you have changed them.',
      'criteria:',
    ];
    criteria.forEach((criterion, place) => {
      const curve = criterion.curve.map(([x, y]) => x + ': ' + y).join(', ');
      lines.push('  ' + criterion.key + ': {weight_ratio: ' + weights[place] + ', curve: {' + curve + '}}');
    });
    return lines.join('\n') + '\n';
  };
})(window.Spanroom);
