import { isObject } from '../../../shared/member.ts';
import type { Entry } from './store.ts';

/** What became of an entry that was sent. */
export type Outcome =
  | { readonly kind: 'kept'; readonly location: string }
  /** Nothing is kept by this form: it shows something, on a page. */
  | { readonly kind: 'shown' }
  | {
      readonly kind: 'refused';
      readonly why: string;
      /** An earlier sending of it had arrived. */
      readonly arrived: boolean;
      /** A stop stands. */
      readonly held: boolean;
      /** The line of the tape that it is about. */
      readonly line?: number;
    }
  /** This browser speaks for the link no longer. */
  | { readonly kind: 'ended' }
  /** No answer, or one that says to come again. */
  | { readonly kind: 'later'; readonly signal: boolean };

/** An answer takes well under a second; over a line that carries nothing a request hangs for minutes. */
const ANSWER_MS = 20_000;

const COME_AGAIN: ReadonlySet<number> = new Set([408, 429, 502, 503, 504]);

/** The key came with other words before: so the first sending did arrive. */
const ARRIVED = 'It did arrive when it was first sent, as it was typed then. Correct that entry instead.';

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** A sentence as it stands on a page: a capital first, one full stop. */
function asSentence(said: string): string {
  const text = said.trim();
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.?!]$/.test(text) ? '' : '.'}`;
}

async function refusalOf(response: Response): Promise<Outcome> {
  const problem: unknown = await response.json().catch(() => undefined);
  if (!isObject(problem)) {
    const why = `The service refused it (${response.status}).`;
    return { kind: 'refused', why, arrived: false, held: false };
  }
  const arrived = problem.code === 'key-reused';
  const why = arrived ? ARRIVED : asSentence(text(problem.detail) || text(problem.title));
  const { line } = problem;
  const about = typeof line === 'number' ? { line } : {};
  return { kind: 'refused', why, arrived, held: problem.code === 'held', ...about };
}

async function outcomeOf(response: Response): Promise<Outcome> {
  const { status } = response;
  if (status === 201) return { kind: 'kept', location: response.headers.get('location') ?? '' };
  if (status === 200) return { kind: 'shown' };
  if (status === 401 || status === 403 || status === 410) return { kind: 'ended' };
  // Any other answer is about this entry: one that the service stumbles over must not hold up those behind it.
  if (COME_AGAIN.has(status)) return { kind: 'later', signal: true };
  return refusalOf(response);
}

/** Posts what a form holds, for its outcome alone. */
export async function post(action: string, link: string, body: BodyInit, at?: number): Promise<Outcome> {
  const typed = at === undefined ? {} : { 'benchcall-typed': new Date(at).toISOString() };
  const headers = { prefer: 'return=minimal', 'benchcall-link': link, ...typed };
  const signal = AbortSignal.timeout(ANSWER_MS);
  try {
    return await outcomeOf(await fetch(action, { method: 'POST', headers, body, signal, cache: 'no-store' }));
  } catch {
    return { kind: 'later', signal: false };
  }
}

/** Sends an entry that waited, as it was typed. */
export const postEntry = ({ action, link, fields, at }: Entry): Promise<Outcome> =>
  post(action, link, new URLSearchParams(fields.map(([name, value]) => [name, value])), at);
