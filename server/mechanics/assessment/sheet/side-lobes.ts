import type { AnswerChoice } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, lowOrHigh, upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { manySaid } from './how-many.ts';
import type { LobeLevel } from './side-level.ts';
import { LOBES_OFF_CARD, type Told } from './side-words.ts';

const CARD: readonly AnswerChoice[] = [
  {
    code: 'other-card',
    label: 'It is another cam, or another card',
    changes: 'The lobes as they were read count; the card is put right.',
  },
  {
    code: 'dial',
    label: 'The dial was read or set wrong',
    changes: 'The lobes are read again; what was read wrong is struck out with the reason.',
  },
  {
    code: 'not-found',
    label: 'Card and dial are right',
    changes: 'Then every lobe is worn or ground so: the cam’s maker is asked before it runs.',
  },
];

/** Lobes of a side that all lie off the card: another cam, or one slip of the dial. */
export function lobesTold({ answers }: Evidence, level: LobeLevel, asking: boolean): Told {
  const { side, lobe, card, restsOn } = level;
  const about = { of: 'side', valve: side } as const;
  const said = `${upperFirst(manySaid(level, `${side} lobes`))} read about ${inches(lobe)}, ${lowOrHigh(lobe - card)} against the card’s ${inches(card)}`;
  const question = asked(
    {
      code: LOBES_OFF_CARD,
      weight: 'weak',
      ask: `${said}. Is it another cam’s card, or was the dial read wrong?`,
      knownBy: 'is it another cam’s card or was the dial read wrong',
      test: 'read the number on the cam and on its card, then one lobe again at the lifter, small hand first',
      restsOn,
    },
    { about, step: 'sheet', among: 'card', answers, choices: CARD },
  );
  const ends: Readonly<Record<string, string>> = {
    'other-card': 'The card is not this cam’s, as was answered: put it right.',
    dial: 'The dial was not right, as was answered. First: another reading of them.',
    'not-found': 'Not the card and not the dial: ask the cam’s maker before it runs.',
  };
  const end =
    ends[chosenOf(question) ?? ''] ?? 'First: ask which, another cam’s card or one slip of the dial.';
  return {
    judgements: [
      {
        id: `lobes:${side}`,
        about,
        against: { to: 'card-lobe', lobeLift: card },
        sentence: `${said}. ${end}`,
        lacks: ['which cam it is, and another reading of a lobe'],
        restsOn,
      },
    ],
    questions: asking ? [question] : [],
  };
}
