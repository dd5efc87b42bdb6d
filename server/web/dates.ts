const TIME = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
  timeZone: 'UTC',
});
const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });

/** `25 Nov, 10:42`, UTC: both sides of a call may sit in different zones. */
export const momentText = (at: Date): string => TIME.format(at);
/** `25 Nov`; with its year where that is not the year of what it stands beside. */
export const dayText = (at: Date, beside: Date = at): string =>
  at.getUTCFullYear() === beside.getUTCFullYear()
    ? DAY.format(at)
    : `${DAY.format(at)} ${at.getUTCFullYear()}`;
/** The same of a day that was picked, `2026-11-30`. */
export const pickedDayText = (day: string, beside: Date): string =>
  dayText(new Date(`${day}T00:00:00Z`), beside);
