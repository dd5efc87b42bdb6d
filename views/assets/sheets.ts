function buttonOf(label: string, act: () => void): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'button button-plain no-print';
  button.textContent = label;
  button.addEventListener('click', act);
  return button;
}

/** A text that is taken elsewhere gets a button that copies it, and says that it did. */
function offerCopies(): void {
  for (const text of document.querySelectorAll<HTMLElement>('[data-copy]')) {
    const button = buttonOf('Copy', () => {
      navigator.clipboard.writeText(text.textContent?.trim() ?? '').then(
        () => {
          button.textContent = 'Copied';
        },
        () => {
          button.textContent = 'Not copied: select it and copy by hand';
        },
      );
    });
    text.after(button);
    // It stands on this one page: Enter takes it, and makes no second.
    button.focus({ preventScroll: true });
  }
}

function offerPrints(): void {
  for (const place of document.querySelectorAll<HTMLElement>('[data-print]'))
    place.append(buttonOf(place.dataset.print ?? 'Print', () => window.print()));
}

/** What only a script can do for a sheet: copying and printing. */
export function offerSheets(): void {
  offerCopies();
  offerPrints();
}
