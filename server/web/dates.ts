const TIME = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
  timeZone: 'UTC',
});
const DATE = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** `25 Nov, 10:42`, UTC: both sides of a call may sit in different zones. */
export const momentText = (at: Date): string => TIME.format(at);
/** `25 November 2026` */
export const dayText = (at: Date): string => DATE.format(at);
