/** What the table shows, as a file that a spreadsheet opens. */
(function (S) {
  'use strict';

  /** A spreadsheet runs a text that begins like a formula; an apostrophe keeps it a text. Numbers stay numbers, negative ones too. */
  const FORMULA = /^[=+\-@\t\r]/;

  function quoted(text) {
    return /[",\r\n]/.test(text) ? '"' + text.replaceAll('"', '""') + '"' : text;
  }

  /** One cell of the file. */
  S.csvCell = (value, type) => {
    if (value === null || value === undefined || Number.isNaN(value)) {
      return '';
    }
    if (type !== 'text') {
      return String(value);
    }
    return quoted(FORMULA.test(value) ? "'" + value : String(value));
  };

  /** The rows and columns that are shown, in their order. */
  S.csvOf = (columns, rows) => {
    const lines = [columns.map((column) => S.csvCell(S.heading(column), 'text')).join(',')];
    for (const row of rows) {
      lines.push(
        columns
          .map((column) => {
            const value = S.currentValue(row, column.key);
            return S.csvCell(column.type === 'text' && value !== null ? S.cell(column, value) : value, column.type);
          })
          .join(','),
      );
    }
    return lines.join('\r\n') + '\r\n';
  };
})(window.Spanroom);
