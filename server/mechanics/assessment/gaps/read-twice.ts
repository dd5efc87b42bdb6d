import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import { byId, listed, placeOf, valveSubject } from '../common/said.ts';
import { isSince } from '../common/since.ts';
import type { Evidence } from '../evidence.ts';
import type { JudgedGap } from './gap.ts';
import { againWanted } from './gap-stops.ts';
import { MISREAD, READ_TWICE } from './misread.ts';

/** The figure that was read, without what its tool allows. */
const figureOf = ({ entry: { reading } }: JudgedGap): string =>
  gapSaid(reading.value === undefined ? reading : { value: reading.value });

const choicesOf = (short: string, again: string): readonly AnswerChoice[] => [
  {
    code: MISREAD.short,
    label: `The ${short}`,
    changes: 'The desk strikes it out, with the reason: what was read again counts.',
  },
  {
    code: MISREAD.again,
    label: `The ${again}`,
    changes: 'It is struck out, with the reason: the short one stands.',
  },
  {
    code: MISREAD.neither,
    label: 'Neither: both hold',
    changes: 'The short one stands: a qualified shop looks before it runs.',
  },
];

/**
 * A gap that was short was to be read again, and was, and is not short by that: nobody reads it a third time before it is
 * said which of the two was misread.
 */
export function readTwice(each: readonly JudgedGap[], evidence: Evidence): AssessedQuestion[] {
  return each.flatMap((short): AssessedQuestion[] => {
    const answer = againWanted(short, evidence);
    if (answer === undefined) return [];
    const again = each
      // What was done between two scans is asked of them themselves.
      .filter(({ entry }) => entry.scan === undefined || short.entry.scan === undefined)
      // With other arms it is another gap.
      .filter(({ entry }) => entry.otherArms === short.entry.otherArms)
      .filter(({ entry, word }) => word !== 'short' && isSince(entry, answer))
      .toSorted((a, b) => byId(a.entry, b.entry));
    if (again.length === 0) return [];
    const [first, second] = [figureOf(short), listed(again.map(figureOf))];
    const title = `${SHEET_KINDS[short.entry.kind]} on ${placeOf(short.entry)}`;
    return [
      asked(
        {
          code: READ_TWICE,
          weight: 'strong',
          ask: `${title} was read ${first}, and ${second} when it was read again. Which was misread?`,
          knownBy: READ_TWICE,
          size: 'Until it is said the short one stands.',
          test: 'With nothing turned: say how each of them was read, with what, and what it was put down as.',
          byLooking: true,
          restsOn: [short.entry.id, ...again.map(({ entry }) => entry.id)],
        },
        {
          about: valveSubject(short.entry),
          step: 'sheet',
          among: [short, ...again].map(({ entry }) => entry.id).join('-'),
          answers: evidence.answers,
          choices: choicesOf(first, second),
        },
      ),
    ];
  });
}
