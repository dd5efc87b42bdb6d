import type { AssessedQuestion, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { inches, listed } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { stillAnswered } from './group-answered.ts';
import {
  cylindersOf,
  GROUP_CHOICES,
  GROUP_OFF,
  type Grouped,
  isHydraulic,
  lashesOf,
  testOf,
} from './group-words.ts';
import { openOnceRead } from './read-since.ts';

/** A group of valves that are off alike: what is read of it, and what that rests on. */
export interface Group {
  readonly first: Grouped;
  readonly own: readonly ValvePlace[];
  readonly about: Subject;
  readonly read: string;
  readonly restsOn: readonly string[];
}

/** By the lash of the card one group would read short, were it left in there. */
export function cardLash(evidence: Evidence, sides: readonly Grouped[], off: number): string {
  const lashes = [...new Set(lashesOf(evidence, sides).map(inches))];
  return lashes.length === 0 || isHydraulic(evidence)
    ? ''
    : `The card’s lash of ${listed(lashes)}, left in ${off < 0 ? 'there' : 'the others'}, would make it.`;
}

/** What the valves that are off have in common. `toRead`: those that an answer wants read again. */
export function groupAsked(
  evidence: Evidence,
  { first, own, about, read, restsOn }: Group,
  lash: string,
  toRead: (answer: string) => readonly ValvePlace[],
): AssessedQuestion {
  const put = asked(
    {
      code: GROUP_OFF,
      weight: 'weak',
      ask: `${read}. ${isHydraulic(evidence) ? 'Did the lifters sink there' : 'Was the lash left in there'}, or were they read with another indicator base or another spring?`,
      knownBy: `are valves ${cylindersOf(own)} off for what they have in common`,
      size: lash,
      test: testOf(evidence, own, first.groups.banks),
      restsOn,
    },
    {
      about,
      step: 'sheet',
      among: `${first.spring}-${cylindersOf(own)}`,
      answers: evidence.answers,
      choices: GROUP_CHOICES,
    },
  );
  const now = openOnceRead(evidence, put, first.spring, toRead);
  return stillAnswered(evidence, now, { spring: first.spring, own });
}
