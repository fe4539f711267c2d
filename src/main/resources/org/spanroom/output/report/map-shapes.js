/** What the map draws, read from the payload once. */
(function (S) {
  'use strict';

  /** Reads all lines, points and polygons of the payload. */
  S.readShapes = () => {
    const { data } = S;
    const shapes = { drawn: null, marks: [] };
    shapes.spans = data.spans.lines.map(S.worldLine);
    shapes.sections = data.sections.lines.map(S.worldLine);
    shapes.streets = data.streets
      ? data.streets.lines
          .flatMap((lines, street) =>
            lines.map((line) => ({
              name: data.streets.names[street],
              line: S.worldLine(line),
            })),
          )
          .filter((street) => street.line)
      : [];
    shapes.corridorSections = new Set(((data.corridors && data.corridors.sections) || []).flat());
    shapes.zones = zones(new S.Table(data.zones), data.zones.polygons);
    shapes.vaults = points(
      data.vaults,
      'points',
      () => 'vault',
      (row) => [row.vault_id, row.kind],
    );
    shapes.findings = points(
      data.findings,
      'points',
      (row) => 'severity-' + row.severity,
      (row) => [row.meaning, [row.source, row.feature].filter(Boolean).join(', '), row.detail],
    );
    shapes.checks = points(
      data.field_checks,
      'points',
      () => 'check',
      (row) => ['Field check: ' + row.span_id, row.look_at],
    );
    S.shapes = shapes;
  };

  function points(raw, name, color, lines) {
    const table = new S.Table(raw);
    return raw[name]
      .map((point, row) => {
        const values = point && table.row(row);
        return point && { at: S.worldPoint(point), color: color(values), lines: lines(values).filter(Boolean) };
      })
      .filter(Boolean);
  }

  function zones(table, polygons) {
    return polygons
      .map((rings, row) => {
        const kind = table.value(row, 'kind') || table.value(row, 'zone_kind') || 'other';
        const lines = (rings || []).map(S.worldLine).filter(Boolean);
        const name = table.value(row, 'name') || table.value(row, 'title') || '';
        return {
          rings: lines,
          box: S.joinBoxes(lines.map((line) => line.box)),
          color: S.zoneColor(kind),
          kind,
          label: kind.replaceAll('_', ' ') + (name ? ': ' + name : ''),
        };
      })
      .filter((zone) => zone.box);
  }
})(window.Spanroom);
