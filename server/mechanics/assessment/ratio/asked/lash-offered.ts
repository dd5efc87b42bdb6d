import { amountsIn } from '../../../../../shared/quantities/amounts-in.ts';
import { asEntered } from '../../../../../shared/quantities/as-entered.ts';
import { UNITS } from '../../../../../shared/quantities/units.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AnswerChoice } from '../../assessment.ts';
import { turned } from '../../common/answers-of.ts';
import { wholeLogOf } from '../../common/lash-log-of.ts';
import { inches } from '../../common/said.ts';
import type { Evidence, LashEvidence } from '../../evidence.ts';
import { codeOf } from '../read/answers.ts';
import type { SetUpRead } from '../read/set-up-read.ts';

const ABOUT_LASH: ReadonlySet<string> = new Set(['lash-not-said', 'lash-left-in', 'lash-setting-not-said']);

/** The lash is out of the lift only once that was read again without it. */
export const LASH_UP = turned('take the lash up, read that lift again, and enter it.');

const offer = (code: string, label: string, value: number): AnswerChoice => ({
  code,
  label,
  changes: 'That much is missing from the lift, and is put back in the gross lift; it is read again at zero.',
  value,
  leadsTo: LASH_UP,
});

/** The log of the valve up to the day on which its passes were read. */
function logBefore(evidence: Evidence, { setUp, valve }: SetUpRead): LashEvidence[] {
  const [first] = valve.used.flatMap(({ day }) => day ?? []).sort();
  return wholeLogOf(evidence, setUp).filter(({ day }) => first === undefined || day <= first);
}

/** Each lash that the valve had by then. */
export const lashesOnLog = (evidence: Evidence, own: SetUpRead): number[] =>
  logBefore(evidence, own).flatMap(({ gap }) =>
    gap.value === undefined || gap.value <= 0 ? [] : [gap.value],
  );

/** The newest of them. */
function ofLog(evidence: Evidence, own: SetUpRead): AnswerChoice[] {
  const line = logBefore(evidence, own).at(-1);
  const value = line?.gap.value;
  if (line === undefined || value === undefined || value <= 0) return [];
  const how = line.moment === 'set' ? 'set' : 'found';
  return [offer('as-logged', `Yes, the ${inches(value)} that was ${how} on ${line.day}`, value)];
}

function ofCard({ card }: Evidence, { setUp }: SetUpRead): AnswerChoice[] {
  const value = card[sideOfValve(setUp.valve)].lash;
  return value === undefined || value <= 0
    ? []
    : [offer('as-card', `Yes, the card’s ${inches(value)}`, value)];
}

/** One amount in somebody's own words is put back to them: it is neither used unasked nor lost. */
function ofWords({ setUp }: SetUpRead): AnswerChoice[] {
  const said = setUp.answers.findLast((answer) => ABOUT_LASH.has(codeOf(answer)));
  const [amount, ...more] = said === undefined || said.value !== undefined ? [] : amountsIn(said.answer);
  if (amount === undefined || more.length > 0 || amount.value <= 0) return [];
  return [
    offer(
      'as-told',
      `Yes, the ${asEntered(amount.readAs)} that was told: “${said?.answer ?? ''}”`,
      amount.value * UNITS[amount.unit].toSi,
    ),
  ];
}

/** Amounts on record that may have been in it when it was read: each is asked, none is taken as it is. */
export const lashOffered = (evidence: Evidence, own: SetUpRead): AnswerChoice[] => [
  ...ofWords(own),
  ...ofLog(evidence, own),
  ...ofCard(evidence, own),
];
