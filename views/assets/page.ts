/** The browser's part of every page. Pages work without it; it only saves steps. */
const summary = document.querySelector<HTMLElement>('[data-error-summary]');
summary?.focus();
