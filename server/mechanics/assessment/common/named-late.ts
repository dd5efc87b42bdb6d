import { defined } from '../../../../shared/defined.ts';

/** How a question was known before its arm was named, and the line of the first entry that it is about. */
export interface KnownBefore {
  readonly among?: string;
  readonly line: number;
}

/** `among`: what told it from others while the arm was not named; nothing where no arm is, or nothing was read. */
export const beforeNamed = (
  armId: string | undefined,
  entries: readonly { readonly line: number }[],
  among?: string,
): { readonly before?: KnownBefore } =>
  armId === undefined || entries.length === 0
    ? {}
    : { before: { ...defined({ among }), line: Math.min(...entries.map(({ line }) => line)) } };

/** What something was known by before its arm was named, and the line of the first entry that it is about. */
export interface NamedBefore {
  readonly key: string;
  readonly line: number;
}

/**
 * Whether an answer that was given under `key` is of what is known by `now`: under its own, or, once something of it was
 * read, under the one that it had before its arm was named.
 */
export const isAnswerOf = (
  { line }: { readonly line: number },
  key: string,
  now: string,
  before: NamedBefore | undefined,
): boolean => key === now || (before !== undefined && key === before.key && line > before.line);
