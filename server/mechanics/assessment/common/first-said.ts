/** A text that may end in a question, with a full stop where it has none of its own. */
export const ended = (text: string): string => (/[.!?]”?$/.test(text) ? text : `${text}.`);

/** As a clause, to go on from: without what ended it. */
export const withoutStop = (text: string): string => text.trim().replace(/\.$/, '');

/** `First: which spring is on the valve. Then 3 more.`: of many things only the first is read aloud. */
export function firstSaid(lacks: readonly string[]): string {
  const [first, second] = lacks;
  if (first === undefined) return '';
  if (second === undefined) return `First: ${ended(first)}`;
  return lacks.length === 2
    ? `First: ${ended(first)} Then: ${ended(second)}`
    : `First: ${ended(first)} Then ${lacks.length - 1} more.`;
}

/** What such a sentence only counts: a page lists it below. */
export const countedOnly = (lacks: readonly string[]): readonly string[] =>
  lacks.length > 2 ? lacks.slice(1) : [];

/** What was asked, and the answer: why an entry is put right, or something is done. */
export const askedSaid = (ask: string, label = ''): string =>
  `asked “${ask}”, the answer was ${label === '' || /^yes\b/i.test(label) ? 'yes' : `“${label}”`}`;
