/** The card of a span: a panel beside the page, or above all of it where the window is narrow. */
(function (S) {
  'use strict';

  const packs = new Map();
  let opener = null;

  const card = () => S.byId('card');

  /** Opens the pack that has the details of a span; null for a span without details. */
  async function detailOf(row) {
    const pack = S.spans.raw.detail ? S.spans.raw.detail[row] : null;
    if (pack === null || pack === undefined) {
      return null;
    }
    if (!packs.has(pack)) {
      packs.set(pack, S.openChunk('data-details-' + pack));
    }
    const details = await packs.get(pack);
    return details ? details.find((detail) => detail.row === row) || null : null;
  }

  function part(title, content, isOpen) {
    return content
      ? S.el('details', { class: 'card-part', open: isOpen }, S.el('summary', {}, S.el('h3', {}, title)), content)
      : null;
  }

  function standing(row) {
    const rank = S.live.ranks[row];
    const exclusion = S.spans.value(row, 'exclusion');
    const reasons = S.wordsOf('reasons', S.spans.value(row, 'reasons') || exclusion);
    const mark = S.swatch(S.rankClasses[S.classOf(rank)].key);
    if (!rank) {
      return S.el('p', { class: 'standing' }, mark, 'Excluded: ' + reasons.join('; '));
    }
    const was = S.live.runRanks[row];
    return S.el(
      'p',
      { class: 'standing' },
      mark,
      S.el('strong', {}, 'Rank ' + S.number(rank)),
      ' of ' + S.number(S.data.counts.ranked) + ', ' + S.number(S.live.points[row], 1) + ' points',
      S.hasOtherWeights()
        ? S.el('span', { class: 'weights-mark' }, 'other weights; rank ' + S.number(was) + ' in the run')
        : null,
    );
  }

  function whereOf(row) {
    const pieces = [
      'vault ' + S.spans.value(row, 'vault_a') + ' (A) to ' + S.spans.value(row, 'vault_b') + ' (B)',
      S.spans.value(row, 'duct') && 'duct ' + S.spans.value(row, 'duct'),
      S.spans.value(row, 'owner'),
    ];
    const year = S.spans.raw.year && S.spans.raw.year[row];
    return S.el(
      'p',
      { class: 'where' },
      pieces.filter(Boolean).join(' · ') + (year ? ' · in the program: year ' + year : ''),
    );
  }

  function cautions(row) {
    const texts = S.wordsOf('cautions', S.spans.value(row, 'cautions'));
    return texts.length
      ? S.el(
          'div',
          { class: 'caution-box' },
          S.el('h3', {}, 'Cautions'),
          S.el(
            'ul',
            {},
            texts.map((text) => S.el('li', {}, text)),
          ),
        )
      : null;
  }

  function permitsFromColumns(row) {
    const needs = S.wordsOf('recovery_needs', S.spans.value(row, 'recovery_needs'));
    const kinds = S.wordsOf('zone_kinds', S.spans.value(row, 'zone_kinds'));
    const days = S.spans.value(row, 'recovery_lead_days');
    return S.el(
      'ul',
      {},
      needs.map((need) => S.el('li', {}, need)),
      kinds.length ? S.el('li', {}, 'Zones touched: ' + kinds.join(', ')) : null,
      days ? S.el('li', {}, 'Apply at least ' + S.number(days) + ' days before') : null,
      !needs.length && !kinds.length ? S.el('li', {}, 'None known.') : null,
    );
  }

  function assumptions(row) {
    const assumed = S.wordsOf('assumed', S.spans.value(row, 'assumed'));
    const source = S.spans.value(row, 'contents_source');
    return S.el(
      'ul',
      {},
      source ? S.el('li', {}, 'Contents of the duct: ' + source.replaceAll('_', ' ')) : null,
      assumed.length
        ? S.el('li', {}, 'Assumed: ' + assumed.join(', '))
        : S.el('li', {}, 'No size or count of this span is recorded as assumed.'),
    );
  }

  function fromTree(detail, begin) {
    const section = detail && S.findSection(detail.tree, begin);
    return section ? S.treeParts(section[2]) : null;
  }

  function withoutDetail(row) {
    const id = S.spans.value(row, 'span_id');
    return S.el(
      'div',
      { class: 'card-part note-box' },
      S.el(
        'p',
        {},
        'This page has cross-sections, forces, the account and the whole calculation of the best spans only; what it has of this one is below. Where the program and the files of the run are, this command prints the rest:',
      ),
      S.el('pre', { tabindex: 0 }, 'spanroom explain ' + quoted(id) + ' --run ' + quoted(document.body.dataset.run)),
      S.el('p', {}, 'A page made with a larger number after --details has more of these cards.'),
    );
  }

  /** A name with spaces or signs of a shell goes between quotation marks. */
  function quoted(text) {
    return /^[\w:./\\%-]+$/.test(text) ? text : '"' + text + '"';
  }

  function fill(row, detail) {
    const forces = detail && S.forcesPart(detail.pulls, row);
    S.put(
      S.byId('card-body'),
      standing(row),
      whereOf(row),
      S.keyFigures(row),
      cautions(row),
      detail && detail.drawings.length
        ? part('Cross-section now and after', S.drawingsPart(detail.drawings), true)
        : null,
      forces ? part('Forces along the span', forces.nodes, true) : null,
      detail ? null : withoutDetail(row),
      part('Where the points come from', S.scorePart(row), true),
      part('How certain', S.surePart(row), true),
      part('In the program', S.programPart(row), true),
      part('Beside it in the bank', S.besidePart(row)),
      part('Bends', fromTree(detail, /^bends/i)),
      part('Assumptions', assumptions(row)),
      part('Permits', fromTree(detail, /^permits/i) || permitsFromColumns(row)),
      detail && detail.money.length ? part('Money line by line', S.moneyPart(detail.money)) : null,
      detail ? part('The whole calculation', S.treeView(detail.tree)) : null,
      part('All columns', S.allColumns(row)),
    );
    if (forces) {
      forces.start();
    }
  }

  function step(by) {
    const index = S.live.rows.indexOf(S.live.selected);
    const row = S.live.rows[index + by];
    if (index >= 0 && row !== undefined) {
      S.select(row, { from: 'card' });
    }
  }

  async function open() {
    const row = S.live.selected;
    if (row === null) {
      return;
    }
    const dialog = card();
    if (!dialog.open) {
      opener = document.activeElement;
      if (window.innerWidth < 760) {
        dialog.showModal();
      } else {
        dialog.show();
      }
      document.body.classList.add('has-card');
    }
    S.byId('card-title').textContent = S.spans.value(row, 'span_id');
    const index = S.live.rows.indexOf(row);
    S.byId('card-before').disabled = index <= 0;
    S.byId('card-after').disabled = index < 0 || index === S.live.rows.length - 1;
    const detail = await detailOf(row).catch(() => null);
    if (S.live.selected === row) {
      fill(row, detail);
      dialog.dataset.row = row;
      if (S.live.selectOptions.from !== 'card' && S.live.selectOptions.from !== 'ranks') {
        S.byId('card-body').scrollTop = 0;
        S.byId('card-title').focus();
      }
    }
  }

  function close() {
    const cameFromTable = opener && S.byId('grid').contains(opener);
    card().close();
    document.body.classList.remove('has-card');
    S.select(null);
    if (cameFromTable || !opener || !opener.isConnected) {
      S.focusCell();
    } else {
      opener.focus();
    }
  }

  S.startCard = () => {
    S.on('selected', open);
    S.byId('card-close').addEventListener('click', close);
    S.byId('card-before').addEventListener('click', () => step(-1));
    S.byId('card-after').addEventListener('click', () => step(1));
    S.byId('card-map').addEventListener('click', () => {
      if (card().matches(':modal')) {
        close();
      }
      S.byId('map').scrollIntoView({ block: 'nearest' });
      S.goToSpan(Number(card().dataset.row));
    });
    card().addEventListener('cancel', (event) => {
      event.preventDefault();
      close();
    });
    document.addEventListener('keydown', (event) => {
      if (event.key === 'Escape' && card().open && !event.defaultPrevented) {
        close();
      }
    });
    S.on('ranks', () => {
      if (S.live.selected !== null) {
        S.select(S.live.selected, { from: 'ranks' });
      }
    });
    document.querySelectorAll('[data-open-row]').forEach((button) =>
      button.addEventListener('click', () => {
        S.select(Number(button.dataset.openRow), { from: 'summary' });
      }),
    );
  };
})(window.Spanroom);
