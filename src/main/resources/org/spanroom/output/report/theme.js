/** Light or dark: as the system says until someone chooses. */
(function (S) {
  'use strict';

  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  let chosen = null;

  S.isDark = () => (chosen === null ? dark.matches : chosen === 'dark');

  function show() {
    document.documentElement.dataset.theme = S.isDark() ? 'dark' : 'light';
    S.forgetColors();
    const button = S.byId('theme');
    button.textContent = S.isDark() ? 'Light page' : 'Dark page';
    S.fire('theme');
  }

  /** Shows the page light while it prints. */
  S.whileLight = (isPrinting) => {
    if (isPrinting) {
      document.documentElement.dataset.theme = 'light';
      S.forgetColors();
      S.fire('theme');
    } else {
      show();
    }
  };

  S.startTheme = () => {
    S.byId('theme').addEventListener('click', () => {
      chosen = S.isDark() ? 'light' : 'dark';
      show();
    });
    dark.addEventListener('change', show);
    show();
  };
})(window.Spanroom);
