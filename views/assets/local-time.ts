const MOMENT = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});

/** `GMT+2`, or its name: what the clock of this device goes by. */
const zone = (): string =>
  new Intl.DateTimeFormat('en-GB', { timeZoneName: 'short' })
    .formatToParts(new Date())
    .find(({ type }) => type === 'timeZoneName')?.value ?? '';

/** Moments that the service writes in UTC, in the time of whoever reads them; where they stand the zone is said. */
export function tellLocalTime(): void {
  for (const moment of document.querySelectorAll<HTMLTimeElement>('time[datetime*="T"]')) {
    const at = new Date(moment.dateTime);
    if (!Number.isNaN(at.getTime())) moment.textContent = MOMENT.format(at);
  }
  for (const place of document.querySelectorAll<HTMLElement>('[data-zone]')) place.textContent = zone();
}
