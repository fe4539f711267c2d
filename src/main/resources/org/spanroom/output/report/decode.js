/** Opens the data that the page carries: text, base64, gzip, JSON. */
(function (S) {
  'use strict';

  function bytes(base64) {
    const text = atob(base64.trim());
    const result = new Uint8Array(text.length);
    for (let i = 0; i < text.length; i++) {
      result[i] = text.charCodeAt(i);
    }
    return result;
  }

  /** Opens one chunk by the id of its element; null where the page has none of that id. */
  S.openChunk = async (id) => {
    const element = S.byId(id);
    if (!element) {
      return null;
    }
    if (typeof DecompressionStream === 'undefined') {
      throw new Error('This browser is too old to open the data in this page. Use one from 2023 or later.');
    }
    const packed = new Blob([bytes(element.textContent)]).stream();
    return new Response(packed.pipeThrough(new DecompressionStream('gzip'))).json();
  };

  /** Reads numbers of 8 bytes, the lowest byte first whatever the machine. */
  S.decodeDoubles = (base64) => {
    const raw = bytes(base64);
    const view = new DataView(raw.buffer);
    const result = new Float64Array(raw.length / 8);
    for (let i = 0; i < result.length; i++) {
      result[i] = view.getFloat64(8 * i, true);
    }
    return result;
  };

  /** A table of the payload, which holds it column by column. */
  S.Table = class {
    constructor(raw) {
      this.rows = raw.rows === undefined ? lengthOf(raw.values[0]) : raw.rows;
      this.columns = raw.columns;
      this.raw = raw;
      this.places = new Map(raw.columns.map((column, place) => [column.key, place]));
    }

    has(key) {
      return this.places.has(key);
    }

    /** What is known of a column; undefined where the table has none of that key. */
    column(key) {
      return this.columns[this.places.get(key)];
    }

    /** The value in a row; null where it is empty or the table has no such column. */
    value(row, key) {
      const values = this.raw.values[this.places.get(key)];
      if (values === undefined) {
        return null;
      }
      if (Array.isArray(values)) {
        return values[row] === undefined ? null : values[row];
      }
      const code = values.codes[row];
      return code === null || code === undefined ? null : values.dict[code];
    }

    /** A row as an object by key. */
    row(row) {
      return Object.fromEntries(this.columns.map((column) => [column.key, this.value(row, column.key)]));
    }
  };

  function lengthOf(values) {
    return values === undefined ? 0 : Array.isArray(values) ? values.length : values.codes.length;
  }
})(window.Spanroom);
