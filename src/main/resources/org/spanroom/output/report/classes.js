/**
 * The classes that the map, the table and the card color by. Colors are custom properties of the page's style, in one place, for a
 * light and a dark page; canvases read them from there.
 */
(function (S) {
  'use strict';

  /** Last rank of each class but the last; ranks are places, so that a class means the same whatever the weights. */
  const LIMITS = [10, 50, 200, 1000];

  S.rankClasses = [
    { key: 'rank-1', label: 'Rank 1 to 10', width: 5 },
    { key: 'rank-2', label: 'Rank 11 to 50', width: 4.2 },
    { key: 'rank-3', label: 'Rank 51 to 200', width: 3.4 },
    { key: 'rank-4', label: 'Rank 201 to 1000', width: 2.7 },
    { key: 'rank-5', label: 'Rank after 1000', width: 2.2 },
    { key: 'rank-none', label: 'Excluded', width: 1.4 },
  ];

  S.NOT_RANKED = S.rankClasses.length - 1;

  /** The class of a rank; 0 is no rank. */
  S.classOf = (rank) => {
    if (!rank) {
      return S.NOT_RANKED;
    }
    const place = LIMITS.findIndex((limit) => rank <= limit);
    return place < 0 ? LIMITS.length : place;
  };

  const ZONES = {
    cut_ban: 'zone-cut',
    night_only: 'zone-night',
    environmental: 'zone-review',
    heritage: 'zone-review',
    rail: 'zone-crossing',
    water: 'zone-crossing',
    school: 'zone-people',
    event: 'zone-people',
    street_works: 'zone-works',
  };

  S.zoneColor = (kind) => ZONES[kind] || 'zone-other';

  /** Kinds of zones that delay work in the same way share a color. */
  S.zoneClasses = {
    'zone-cut': 'Street cut ban',
    'zone-night': 'Night work only',
    'zone-review': 'Environment or heritage',
    'zone-crossing': 'Rail or water',
    'zone-people': 'School or event',
    'zone-works': 'Works of others',
    'zone-other': 'Other or unknown kind',
  };

  /** What is wrong with the data, the gravest first. */
  S.severityClasses = {
    'severity-rejected': 'Rejected: not in the results',
    'severity-suspect': 'Suspect: missing or contradictory',
    'severity-note': 'Note: nothing to fix',
  };

  /** Years of the program; all from the sixth share a color. */
  S.yearClasses = ['Year 1', 'Year 2', 'Year 3', 'Year 4', 'Year 5', 'Year 6 or later'];

  S.yearColor = (place) => 'year-' + Math.min(place + 1, S.yearClasses.length);

  const colors = new Map();

  /** A color of the style by the name of its property. */
  S.color = (name) => {
    if (!colors.has(name)) {
      colors.set(
        name,
        getComputedStyle(document.documentElement)
          .getPropertyValue('--' + name)
          .trim() || '#888888',
      );
    }
    return colors.get(name);
  };

  /** How charts write a text. */
  S.chartText = (name) => ({ color: S.color(name), fontSize: S.textPixels() });

  /** To be called when the page turns dark or light. */
  S.forgetColors = () => colors.clear();

  /** A mark of a class, with its word beside it where color alone does not say enough. */
  S.swatch = (property) =>
    S.el('span', {
      class: 'swatch',
      'aria-hidden': 'true',
      style: { 'background-color': 'var(--' + property + ')' },
    });
})(window.Spanroom);
