/** Opens the data and starts the panels. */
(function (S) {
  'use strict';

  async function start() {
    S.startTheme();
    const data = await S.openChunk('data-core');
    S.data = data;
    S.currency = data.currency;
    S.spans = new S.Table(data.spans);
    S.startState(data);
    S.startTable();
    S.startMap();
    S.startLegend();
    S.startCard();
    S.startCharts();
    S.startWhatIf();
    S.startPrint();
    performance.mark('ready');
    document.body.dataset.ready = 'true';
  }

  start().catch((failure) => {
    const place = S.byId('failed');
    place.hidden = false;
    place.textContent = 'Map, table and charts cannot be shown: ' + failure.message;
    document.body.dataset.ready = 'failed';
    console.error(failure);
  });
})(window.Spanroom);
