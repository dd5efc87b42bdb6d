import { allowance } from '../../kit/allowances.ts';
import type { AnswerChoice } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, ratioSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { awaySaid } from '../ratio/ratio-said.ts';
import type { Level } from './side-level.ts';
import { claimed, plural, type Told } from './side-words.ts';

const OFF: readonly AnswerChoice[] = [
  {
    code: 'set-up',
    label: 'It was the dial, the unit or the lash',
    changes: 'All of them are read again; what was read wrong is struck out with the reason.',
  },
  {
    code: 'not-found',
    label: 'Looked: they were read right',
    changes: 'Then it is another set than it is held to be: its number is looked up.',
  },
];

/** The lash that was left in would make it. */
function lashSaid({ card }: Evidence, { side, ratio, claim, lifts }: Level): string {
  const { lash } = card[side];
  if (lash === undefined || lash <= 0 || ratio === undefined || claim === undefined) return '';
  const short = lifts * (claim.ratio / ratio.value - 1);
  return Math.abs(short - lash) <= 2 * allowance('repeat')
    ? `The card’s lash of ${inches(lash)}, left in, would make it.`
    : '';
}

/** A whole side that is off: no one arm makes it, and what would is asked. */
export function offOf(evidence: Evidence, level: Level, asking: boolean): Told {
  const { side, spring, count, ratio, claim, restsOn } = level;
  if (ratio === undefined || claim === undefined) return { judgements: [], questions: [] };
  const about = { of: 'side', valve: side } as const;
  const away = `${awaySaid(ratio.value, claim.ratio)} ${claimed(level)}`;
  const question = asked(
    {
      code: 'side-off',
      weight: 'weak',
      ask: `All ${count} ${plural(side)} read ${away}. Was the dial, the unit or the lash wrong alike for all of them?`,
      knownBy: 'was the dial the unit or the lash wrong alike for all of them',
      size: lashSaid(evidence, level),
      test: 'look at the dial’s travel in a turn, the unit and the lash, and read one of them again, small hand first',
      restsOn,
    },
    { about, step: 'sheet', among: spring, answers: evidence.answers, choices: OFF },
  );
  const chosen = chosenOf(question);
  const end =
    chosen === 'set-up'
      ? 'They were not read right, as was answered. First: another reading of them.'
      : chosen === 'not-found'
        ? 'They were read right, so it is not that set. Look its number up.'
        : 'No one arm makes that. First: dial, unit and lash; then the set.';
  return {
    judgements: [
      {
        id: `side:${spring}:${side}`,
        about,
        against: { to: claim.to, ratio: claim.ratio },
        sentence: `All ${count} ${plural(side)} read alike, about ${ratioSaid(ratio.value)}: ${away}. ${end}`,
        lacks:
          chosen === 'not-found' ? ['the number of the set looked up'] : ['another reading of one of them'],
        restsOn,
      },
    ],
    questions: asking ? [question] : [],
  };
}
