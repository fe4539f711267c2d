/** The whole calculation of a span as headings that open, with a search over them. */
(function (S) {
  'use strict';

  const text = (cell) => (cell === null || cell === undefined ? '' : String(cell));

  function tablePart([, title, heads, rows]) {
    return S.el(
      'div',
      { class: 'scroll-x', tabindex: 0, role: 'region', 'aria-label': title || 'Table' },
      S.el(
        'table',
        { class: 'plain' },
        title ? S.el('caption', {}, title) : null,
        S.el(
          'thead',
          {},
          S.el(
            'tr',
            {},
            heads.map((head) => S.el('th', { scope: 'col' }, text(head))),
          ),
        ),
        S.el(
          'tbody',
          {},
          rows.map((row) =>
            S.el(
              'tr',
              { class: 'tree-leaf' },
              row.map((cell) => S.el('td', {}, text(cell))),
            ),
          ),
        ),
      ),
    );
  }

  /** The parts of a section; items that follow each other are one list. */
  S.treeParts = (parts, depth = 0) => {
    const nodes = [];
    let list = null;
    for (const part of parts) {
      if (part[0] === 'i') {
        if (!list) {
          list = S.el('dl', { class: 'pairs' });
          nodes.push(list);
        }
        list.append(S.el('div', { class: 'tree-leaf' }, S.el('dt', {}, text(part[1])), S.el('dd', {}, text(part[2]))));
      } else {
        list = null;
        nodes.push(
          part[0] === 's'
            ? S.treeSection(part, depth + 1)
            : part[0] === 't'
              ? tablePart(part)
              : S.el('p', { class: 'tree-leaf' }, text(part[1])),
        );
      }
    }
    return nodes;
  };

  S.treeSection = ([, title, parts], depth = 0) =>
    S.el('details', { class: 'tree-section' }, S.el('summary', {}, text(title)), S.treeParts(parts, depth));

  /** The first section whose title begins like this; null where the tree has none. */
  S.findSection = (tree, begin) => {
    if (!tree || tree[0] !== 's') {
      return null;
    }
    if (begin.test(text(tree[1]))) {
      return tree;
    }
    for (const part of tree[2]) {
      const found = S.findSection(part, begin);
      if (found) {
        return found;
      }
    }
    return null;
  };

  /** Shows what a text is found in, and opens the headings above it. */
  function search(root, wanted, count) {
    const query = wanted.trim().toLowerCase();
    let found = 0;
    root.querySelectorAll('.tree-leaf').forEach((leaf) => {
      const isHit = query !== '' && leaf.textContent.toLowerCase().includes(query);
      found += isHit ? 1 : 0;
      leaf.hidden = query !== '' && !isHit;
      leaf.classList.toggle('hit', isHit);
    });
    root.querySelectorAll('details').forEach((section) => {
      const isNamed = query !== '' && section.firstElementChild.textContent.toLowerCase().includes(query);
      const hasHit = section.querySelector('.hit') !== null;
      section.hidden = query !== '' && !hasHit && !isNamed;
      section.open = query !== '' && hasHit;
      if (isNamed && !hasHit) {
        section.querySelectorAll('.tree-leaf').forEach((leaf) => {
          leaf.hidden = false;
        });
      }
    });
    // A table of which no row is left says nothing.
    root.querySelectorAll('.scroll-x').forEach((table) => {
      table.hidden = table.querySelector('tbody tr:not([hidden])') === null;
    });
    count.textContent = query === '' ? '' : found === 1 ? '1 line' : S.number(found) + ' lines';
  }

  /** The tree with its search field. */
  S.treeView = (tree) => {
    const root = S.el('div', { class: 'tree' }, S.treeParts(tree[2]));
    const count = S.el('span', { class: 'count', role: 'status' });
    return [
      S.el(
        'div',
        { class: 'tree-search' },
        S.el(
          'label',
          {},
          'Find in the calculation ',
          S.el('input', {
            type: 'search',
            on: { input: (event) => search(root, event.target.value, count) },
          }),
        ),
        count,
      ),
      root,
    ];
  };
})(window.Spanroom);
