import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { type AdjusterKind, adjusterKind, lookAt } from '../../lash/adjuster-words.ts';
import type { LashGrowth, LashQuestion } from '../../lash/types.ts';
import { unusualLash } from '../../lash/usual-lash.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import { turned } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { isLashDoubted, lashDoubt } from '../common/lash-doubt.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { lashWanted } from '../common/lash-wanted.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import { heatsWanting, isNearLash } from '../common/wanted-heat.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { LashValveDetail } from './detail.ts';
import { ANSWERS, OF_CLOSING } from './growth-answers.ts';
import { idsAt } from './valves.ts';

function placeIn({ cylinder, valve }: Pick<LashQuestion, 'cylinder' | 'valve'>): ValvePlace | undefined {
  return cylinder === undefined || valve === undefined ? undefined : { cylinder, valve };
}

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
    leadsTo: turned('find out which lash is asked for at that heat, set it to that, and enter it.'),
  },
];

/**
 * A gap that grew again after it was set again, or closed, is asked strongly: setting it once more hides the cause.
 */
export function question(
  found: LashQuestion,
  again: readonly LashGrowth[],
  valves: readonly LashValveDetail[],
  { answers, engine }: Evidence,
): AssessedQuestion {
  const place = placeIn(found);
  const about: Subject = place === undefined ? { of: 'build' } : valveSubject(place);
  const stops = again.some((growth) => place === undefined || placeOf(growth) === placeOf(place));
  const byLooking = stops ? looking(found.code, adjusterKind(engine)) : undefined;
  return asked(
    {
      ...found,
      weight: (stops || OF_CLOSING.has(found.code)) && place !== undefined ? 'strong' : 'weak',
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

/** It was found since at a heat at which it is known what is asked for: that gap is set against it, and this one is done. */
const isReadSince = (line: LashEvidence, lines: readonly LashEvidence[], evidence: Evidence): boolean =>
  lines
    .slice(lines.indexOf(line) + 1)
    .some(
      (each) =>
        each.moment === 'found' &&
        each.engine !== line.engine &&
        !isLashDoubted(evidence, each) &&
        lashWanted(evidence, each) !== undefined,
    );

/** The card's figure for the heat of the line where the metals tell it, else as the card has it. */
function askedAt(line: LashEvidence, evidence: Evidence) {
  const wanted = lashWanted(evidence, line);
  const card = evidence.card[sideOfValve(line.valve)].lash;
  return wanted?.from === 'metals'
    ? { card: wanted.gap, cardAt: wanted.heat, byMetals: { printed: card, toCard: wanted.toCard ?? 0 } }
    : { card, cardAt: evidence.card.lashAt };
}

/** The gap it was set to last, against the card or the usual band of its lifter; what is found since leaves it as asked. */
export function unusual({ lines, ...place }: LashValveDetail, evidence: Evidence): AssessedQuestion[] {
  const line = lines.findLast(({ moment }) => moment === 'set');
  const { value, low = value, high = value } = line?.gap ?? {};
  if (line === undefined || low === undefined || high === undefined) return [];
  // With another arm on that setting is gone.
  if (!lashLogOf(evidence, place).includes(line)) return [];
  if (isLashDoubted(evidence, line) || isReadSince(line, lines, evidence)) return [];
  // What the metals ask for at that heat is asked for.
  if (value !== undefined && heatsWanting(value, evidence).some((heat) => heat === line.engine)) return [];
  const found = unusualLash({
    low,
    high,
    engine: line.engine,
    lifter: evidence.engine.lifter,
    ...askedAt(line, evidence),
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
