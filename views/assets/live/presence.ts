export interface Present {
  readonly who: string;
  readonly kind: string;
  readonly step: string;
}

export function isPresent(value: unknown): value is Present {
  return (
    typeof value === 'object' &&
    value !== null &&
    'who' in value &&
    typeof value.who === 'string' &&
    'kind' in value &&
    typeof value.kind === 'string' &&
    'step' in value &&
    typeof value.step === 'string'
  );
}

/** What the list of steps calls the one at this address. */
const nameOf = (path: string): string | undefined =>
  [...document.querySelectorAll<HTMLAnchorElement>('.missing a')]
    .find(({ pathname }) => pathname === path)
    ?.childNodes[0]?.textContent?.trim();

/** Says who else has the call open, with the way to the step they look at. */
export function showPresence(people: readonly Present[]): void {
  const main = document.querySelector<HTMLElement>('main[data-live]');
  const place = document.querySelector<HTMLElement>('[data-presence]');
  if (main === null || place === null) return;
  const { steps = '', step = '' } = main.dataset;
  // One’s own other pages, and a line of one’s own that was cut and is not known to be gone yet.
  const own = document.documentElement.dataset.side === 'builder' ? 'builder' : 'staff';
  const others = people.filter(({ who, kind }) => who !== main.dataset.self || kind !== own);
  place.replaceChildren(
    ...others.map((person) => {
      const item = document.createElement('span');
      item.className = 'presence-person';
      const where = person.kind === 'builder' ? 'at the engine' : 'at the desk';
      item.append(
        person.kind === 'program' ? `${person.who} is connected` : `${person.who}, ${where}, is here`,
      );
      if (person.step === '' || person.step === step) return item;
      const link = document.createElement('a');
      link.href = `${steps}/${person.step}`;
      link.textContent = `go to their step, ${nameOf(link.pathname) ?? person.step}`;
      item.append(': ', link);
      return item;
    }),
  );
}
