import { allowance } from '../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion, Judgement } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { bareInches, inches, lowOrHigh, nominalSaid, ratioSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { awaySaid } from '../ratio/ratio-said.ts';
import type { SheetRatioDetail, SheetSideDetail } from './detail.ts';
import type { SheetRow } from './rows.ts';
import { isOff, type Level, type LobeLevel, levelOf, lobesOffCard, sidesOf } from './side-level.ts';

export interface Told {
  readonly judgements: readonly Judgement[];
  readonly questions: readonly AssessedQuestion[];
}

const plural = (side: string): string => `${side}s`;

const claimed = ({ claim }: Level): string =>
  claim === undefined
    ? ''
    : `the ${nominalSaid(claim.ratio)} ${claim.to === 'mark' ? 'stamped on them' : 'they are sold as'}`;

/** A sheet does not say how the lash was: no word against a mark rests on it. */
const NO_LASH = 'how the lash was when they were read';

const SPRING = { light: '', running: ' on the running spring', 'not-said': '' } as const;

/** Where the middle ratio of a side stands, in words that promise no more than it bears. */
function standing(level: Level): string {
  const { ratio, claim, bands, spring } = level;
  if (ratio === undefined) return '';
  const at = `Their middle ratio${SPRING[spring]} is ${ratioSaid(ratio.value)}`;
  if (claim === undefined || spring === 'not-said') return ` ${at}.`;
  const away = `${at}, ${awaySaid(ratio.value, claim.ratio)} ${claimed(level)}`;
  if (spring === 'running') return ` ${away}; a loaded ratio is set against no mark.`;
  if (bands.includes('over'))
    return ` ${away}: ordinary for arms made with room for flex. Use ${ratioSaid(ratio.value)} for every clearance.`;
  return ` ${away}.`;
}

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

function offOf(evidence: Evidence, level: Level, asking: boolean): Told {
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
      ? 'They were read wrong, as was answered: read them again.'
      : chosen === 'not-found'
        ? 'They were read right: it is another set than that. Look its number up.'
        : 'No one arm makes that: dial, unit and lash first, then the set.';
  return {
    judgements: [
      {
        id: `side:${spring}:${side}`,
        about,
        against: { to: claim.to, ratio: claim.ratio },
        sentence: `All ${count} ${plural(side)} read alike, about ${ratioSaid(ratio.value)}: ${away}. ${end}`,
        lacks: chosen === 'not-found' ? ['the number of the set looked up'] : ['one of them read again'],
        restsOn,
      },
    ],
    questions: asking ? [question] : [],
  };
}

/** No valve of the side stands out: that is an answer, and is said. */
function cleanOf(level: Level): Judgement {
  const { side, spring, count, farthest, restsOn } = level;
  const within = `all ${count} lie within ${inches(Math.max(farthest, allowance('repeat') / 2))} of their middle`;
  return {
    id: `side:${spring}:${side}`,
    about: { of: 'side', valve: side },
    against: { to: 'siblings' },
    sentence: `No ${side} stands out${SPRING[spring]}: ${within}.${standing(level)}`,
    lacks: [level.ratio === undefined ? 'lobe lifts, or those of the card, for a ratio' : NO_LASH],
    restsOn,
  };
}

/** Intakes and exhausts of one set, each alike, that differ from one another. */
function apartOf([intake, exhaust]: readonly [Level, Level]): Judgement[] {
  const [one, other] = [intake.ratio, exhaust.ratio];
  if (one === undefined || other === undefined || intake.claim?.ratio !== exhaust.claim?.ratio) return [];
  const apart = one.low > other.high || other.low > one.high;
  const percent = Math.round(Math.abs(one.value / other.value - 1) * 100);
  if (!apart || percent < 2) return [];
  return [
    {
      id: `sides-apart:${intake.spring}`,
      about: { of: 'build' },
      against: { to: 'siblings' },
      sentence: `Intakes read ${ratioSaid(one.value)} and exhausts ${ratioSaid(other.value)}, ${percent} % apart. Look whether they are two numbers; then read both lobes of one cylinder again.`,
      lacks: ['the numbers of both, and their lobes read again'],
      restsOn: [...intake.restsOn, ...exhaust.restsOn].sort(),
    },
  ];
}

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

function lobesTold(
  { answers }: Evidence,
  { side, count, lobe, card, restsOn }: LobeLevel,
  asking: boolean,
): Told {
  const about = { of: 'side', valve: side } as const;
  const said = `All ${count} ${side} lobes read about ${bareInches(lobe)}, ${lowOrHigh(lobe - card)} against the card’s ${inches(card)}`;
  const question = asked(
    {
      code: 'lobes-off-card',
      weight: 'weak',
      ask: `${said}. Is it another cam’s card, or was the dial read wrong?`,
      knownBy: 'is it another cam’s card or was the dial read wrong',
      test: 'read the number on the cam and on its card, then one lobe again at the lifter, small hand first',
      restsOn,
    },
    { about, step: 'sheet', among: 'card', answers, choices: CARD },
  );
  const ends: Readonly<Record<string, string>> = {
    'other-card': 'The card is another cam’s, as was answered: put it right.',
    dial: 'The dial was wrong, as was answered: read them again.',
    'not-found': 'Card and dial are right: ask the cam’s maker before it runs.',
  };
  const end = ends[chosenOf(question) ?? ''] ?? 'Another cam’s card, or one slip of the dial: ask which.';
  return {
    judgements: [
      {
        id: `lobes:${side}`,
        about,
        against: { to: 'card-lobe', lobeLift: card },
        sentence: `${said}. ${end}`,
        lacks: ['which cam it is, and a lobe read again'],
        restsOn,
      },
    ],
    questions: asking ? [question] : [],
  };
}

const joined = (told: readonly Told[]): Told => ({
  judgements: told.flatMap(({ judgements }) => judgements),
  questions: told.flatMap(({ questions }) => questions),
});

/**
 * What all valves of a side say together: that none stands out, how their ratio stands to what they are sold as, that a
 * whole side is off, or that every lobe is. What is asked of the whole side already, and
 * strongly, is not asked a second way.
 *
 * Source: the bands of a light-spring ratio and what siblings differ by, common practice, no published source.
 */
export function sidesTold(
  evidence: Evidence,
  rows: readonly SheetRow[],
  {
    sides,
    ratios,
  }: { readonly sides: readonly SheetSideDetail[]; readonly ratios: readonly SheetRatioDetail[] },
  raised: readonly AssessedQuestion[],
): Told {
  const isAskedOf = (restsOn: readonly string[]) =>
    raised.some(
      ({ about, answered, weight, restsOn: own }) =>
        about.of === 'side' &&
        weight === 'strong' &&
        answered === undefined &&
        own.some((id) => restsOn.includes(id)),
    );
  const levels = sides.flatMap((side) => {
    const level = levelOf(evidence, side, rows, ratios);
    return level === undefined ? [] : [{ level, odd: side.odd.length > 0 || side.lobesDown.length > 0 }];
  });
  const ofSides = levels.map(({ level, odd }): Told => {
    if (isOff(level)) return offOf(evidence, level, !isAskedOf(level.restsOn));
    return { judgements: odd ? [] : [cleanOf(level)], questions: [] };
  });
  const lobes = lobesOffCard(evidence, rows).map((each) =>
    lobesTold(evidence, each, !isAskedOf(each.restsOn)),
  );
  const apart = sidesOf(levels.map(({ level }) => level).filter((level) => !isOff(level))).flatMap(apartOf);
  return joined([...ofSides, ...lobes, { judgements: apart, questions: [] }]);
}
