import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { type AdjusterKind, adjusterKind, lookAt } from '../../lash/adjuster-words.ts';
import type { LashGrowth, LashQuestion } from '../../lash/types.ts';
import { unusualLash } from '../../lash/usual-lash.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { isLashDoubted, lashDoubt } from '../common/lash-doubt.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import { heatsWanting, isNearLash } from '../common/wanted-heat.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { LashValveDetail } from './detail.ts';
import { idsAt } from './valves.ts';

function placeIn({ cylinder, valve }: Pick<LashQuestion, 'cylinder' | 'valve'>): ValvePlace | undefined {
  return cylinder === undefined || valve === undefined ? undefined : { cylinder, valve };
}

/** Of a bucket there is no nut to let go: its gap changes by wear, or as the valve beds into its seat. */
const OF_BUCKET = {
  ask: 'Is something wearing on this valve, or did the shim not seat?',
  test: 'look whether the shim is seated and whole, at the bucket’s face and at the lobe.',
};

/** Under the stop that it is asked for, only what takes no turning settles it. */
function looking(code: LashQuestion['code'], kind: AdjusterKind): string | undefined {
  if (code === 'lash-grew')
    return `With nothing turned, and before the adjuster is touched: ${lookAt(kind)}.`;
  return code === 'lash-grew-everywhere'
    ? 'All at once is not one part. With nothing turned: look at the oil, and ask how, by whom and at what heat each was set and read.'
    : undefined;
}

/** Whether a setting is what was asked for; either way the log stays as it is. */
const ASKED_FOR: AssessedQuestion['answers'] = [
  { code: 'not-found', label: 'Yes, it is what is asked for', changes: 'The question is settled.' },
  {
    code: 'found',
    label: 'No',
    changes: 'What is asked for is found out before the lash is set again.',
    leadsTo: done('find out which lash is asked for at that heat, set it to that, and enter it.'),
  },
];

/** Answers by which a gap that closed is the valve’s own doing. */
export const ONE_HEAT = 'one-heat';
export const HELD = 'held';

/** What may be answered to each question of a growth: a yes is the cause of one, and says of another that it was read right. */
const ANSWERS: Readonly<Record<LashQuestion['code'], AssessedQuestion['answers']>> = {
  'lash-grew': [
    {
      code: 'found',
      label: 'Yes',
      changes: 'The cause is known; it is put right before the lash is set again.',
    },
    {
      code: 'not-found',
      label: 'Looked: no',
      changes: 'The next cause is looked for; the lash is not set again.',
    },
  ],
  'lash-grew-everywhere': [
    {
      code: 'not-found',
      label: 'Yes, all in the same way',
      changes: 'It is no way of reading: the next cause is looked for, the oil first.',
    },
    {
      code: 'found',
      label: 'No, or nobody knows',
      changes: 'One is set again step by step, and read at the heat it was set at.',
      leadsTo: done('set one again step by step, and read it at the heat that it was set at.'),
    },
  ],
  'lash-closed': [
    {
      code: ONE_HEAT,
      label: 'Yes, at one heat',
      changes:
        'The valve may be sinking into its seat: a qualified shop looks, and the gap is not set away before.',
    },
    {
      code: 'other-heat',
      label: 'No, or nobody knows',
      changes: 'It is read again at the heat it was set at; until then nothing is told of it.',
    },
  ],
  'lash-closed-nut': [
    {
      code: 'moved',
      label: 'It has moved',
      changes: 'Its lock let go: that is put right before the gap is set again.',
    },
    {
      code: HELD,
      label: 'Looked: it held',
      changes:
        'The valve may be sinking into its seat: a qualified shop looks, and the gap is not set away before.',
    },
  ],
  'lash-heat-unsaid': [
    {
      code: 'same',
      label: 'Yes, at the same heat',
      changes: 'That heat is put into the log; then the two are set against each other.',
    },
    {
      code: 'other',
      label: 'No, or nobody knows',
      changes: 'They stay apart: it is read again at the heat it was set at.',
    },
  ],
  'lash-heat-differs': [
    {
      code: 'not-found',
      label: 'Yes, as the log has them',
      changes: 'They stay apart: it is read again at the heat it was set at.',
    },
    {
      code: 'found',
      label: 'No: a heat in the log is wrong',
      changes: 'That heat is put right in the log; then the two are set against each other.',
    },
  ],
};

/** A gap that grew again after it was set again is asked strongly: setting it once more hides the cause. */
export function question(
  found: LashQuestion,
  again: readonly LashGrowth[],
  valves: readonly LashValveDetail[],
  { answers, engine }: Evidence,
): AssessedQuestion {
  const bucket = engine.gear === 'bucket';
  const place = placeIn(found);
  const about: Subject = place === undefined ? { of: 'build' } : valveSubject(place);
  const stops = again.some((growth) => place === undefined || placeOf(growth) === placeOf(place));
  const byLooking = stops ? looking(found.code, adjusterKind(engine)) : undefined;
  return asked(
    {
      ...found,
      ...(bucket && found.code === 'lash-grew' ? OF_BUCKET : {}),
      weight: stops && place !== undefined ? 'strong' : 'weak',
      ...(byLooking === undefined ? {} : { test: byLooking, byLooking: true }),
      restsOn: idsAt(valves, place),
    },
    {
      about,
      step: 'adjuster',
      answers,
      choices: ANSWERS[found.code],
    },
  );
}

/** Set at the one heat to what is given for the other: that is the one slip the figure itself shows. */
function isOtherHeat(line: LashEvidence, gap: number | undefined, { card }: Evidence): boolean {
  const printed = card[sideOfValve(line.valve)].lash;
  const differs = card.lashAt !== undefined && line.engine !== 'not-said' && line.engine !== card.lashAt;
  return differs && printed !== undefined && gap !== undefined && isNearLash(gap, printed);
}

/** The gap it was set to last, against the card or the usual band of its lifter; what is found since leaves it as asked. */
export function unusual({ lines, ...place }: LashValveDetail, evidence: Evidence): AssessedQuestion[] {
  const line = lines.findLast(({ moment }) => moment === 'set');
  const { value, low = value, high = value } = line?.gap ?? {};
  if (line === undefined || low === undefined || high === undefined) return [];
  if (isLashDoubted(evidence, line)) return [];
  // What the metals ask for at that heat is asked for.
  if (value !== undefined && heatsWanting(value, evidence).some((heat) => heat === line.engine)) return [];
  const found = unusualLash({
    low,
    high,
    engine: line.engine,
    lifter: evidence.engine.lifter,
    card: evidence.card[sideOfValve(place.valve)].lash,
    cardAt: evidence.card.lashAt,
  });
  if (found === undefined) return [];
  const weight = isOtherHeat(line, value, evidence) ? 'strong' : 'weak';
  return [
    asked(
      { ...found, weight, restsOn: [line.id] },
      { about: valveSubject(place), step: 'adjuster', answers: evidence.answers, choices: ASKED_FOR },
    ),
  ];
}

/** Every line is asked of, not the newest alone: the growth rests on those before. */
export const doubts = ({ lines }: LashValveDetail, evidence: Evidence): AssessedQuestion[] =>
  lines.flatMap((line) => lashDoubt(evidence, line) ?? []);
