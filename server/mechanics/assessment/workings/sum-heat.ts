import type { AssessedQuestion } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { findsOf } from '../common/found-twice.ts';
import { allKept, type KeptSet } from '../common/kept.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import { type Heat, heatsWanting, isNearLash } from '../common/wanted-heat.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';
import type { TurnMade } from './turn-made.ts';

const AT_ONE_HEAT = done(
  'work the turn out again with the gap found and the lash wanted at one heat, and keep that.',
);
const AGAIN = 'The turn is worked out again with both gaps at one heat.';

function choicesOf(line: LashEvidence, at: Heat): AssessedQuestion['answers'] {
  const other = at === 'hot' ? 'cold' : 'hot';
  return line.engine === 'not-said'
    ? [
        { code: 'not-found', label: `It was found ${at}`, changes: 'The turn counts.' },
        { code: 'found', label: `It was found ${other}`, changes: AGAIN, leadsTo: AT_ONE_HEAT },
      ]
    : [
        { code: 'found', label: 'No, the two were mixed', changes: AGAIN, leadsTo: AT_ONE_HEAT },
        {
          code: 'not-found',
          label: `Yes, that is the gap that is wanted ${other}`,
          changes: 'The turn counts.',
        },
      ];
}

/** What the metals on record make of the gap that is wanted. */
function byMetals(lashWanted: number, at: Heat, evidence: Evidence): string {
  const sum = allKept(evidence, 'heat').findLast(({ set }) => isNearLash(set[at], lashWanted))?.set;
  if (sum === undefined) return '';
  const other = at === 'hot' ? 'cold' : 'hot';
  return ` By the metals that is about ${inches(sum[other])} ${other}.`;
}

function askedOf(
  { id }: KeptSet<TurnsEvidence>,
  line: LashEvidence,
  lashWanted: number,
  at: Heat,
  evidence: Evidence,
): AssessedQuestion {
  const place = placeOf(line);
  const isSaid = line.engine !== 'not-said';
  return asked(
    {
      code: 'turn-heat',
      weight: 'strong',
      ask: isSaid
        ? `Is ${inches(lashWanted)} wanted ${line.engine} at ${place}, though it is given for a ${at} engine?`
        : `Was ${place} found hot or cold?`,
      knownBy: `heat of the turn found ${line.engine}`,
      size: `${inches(line.gap.value ?? 0)} was found ${isSaid ? line.engine : 'hot or cold, nobody said'}; ${inches(lashWanted)} is given for a ${at} engine, and the metals move the gap between the two.${byMetals(lashWanted, at, evidence)}`,
      test: isSaid
        ? `Work out by the metals what is wanted ${line.engine}, or ask the cam’s maker for that figure; then work the turn out again to it. What is read ${at} counts.`
        : `Ask whether the gap of ${place} was read hot or cold; where nobody knows, it is not worked with.`,
      byLooking: true,
      restsOn: [line.id],
    },
    {
      about: valveSubject(line),
      step: 'adjuster',
      among: `${id}-${line.id}`,
      answers: evidence.answers,
      choices: choicesOf(line, at),
    },
  );
}

/**
 * A turn from a gap of one heat to a lash of the other: made so it leaves neither. Asked of each valve that waits for it,
 * before the turn is told.
 *
 * Source: the gap of one engine differs hot and cold, common practice, no published source.
 */
export function heatOfSum(
  kept: KeptSet<TurnsEvidence>,
  { waiting }: TurnMade,
  evidence: Evidence,
): AssessedQuestion[] {
  const { lashWanted } = kept.set;
  if (lashWanted === undefined) return [];
  const heats = heatsWanting(lashWanted, evidence);
  const [at] = heats;
  if (at === undefined) return [];
  return waiting.flatMap((place) => {
    const line = findsOf(evidence, place).at(-1);
    if (line === undefined || heats.some((heat) => heat === line.engine) || heats.length > 1) return [];
    return [askedOf(kept, line, lashWanted, at, evidence)];
  });
}
