import { allowance } from '../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, listed, ratioSaid } from '../common/said.ts';
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

/** A side that is off, with what it is over and what it is held to be. */
type Off = Level & Required<Pick<Level, 'ratio' | 'claim'>>;

const hasBoth = (level: Level): level is Off => level.ratio !== undefined && level.claim !== undefined;

/** The lash of the card, left in, would make it [m]. */
function lashOf({ card }: Evidence, { side, ratio, claim, lifts }: Off): number | undefined {
  const { lash } = card[side];
  if (lash === undefined || lash <= 0) return undefined;
  const short = lifts * (claim.ratio / ratio.value - 1);
  return Math.abs(short - lash) <= 2 * allowance('repeat') ? lash : undefined;
}

/** What fits all of them alike: the lash, where the card has one that makes it; else a lifter that sinks, if one may. */
function fitting(evidence: Evidence, sides: readonly Off[]): 'lash' | 'lifter' | undefined {
  if (sides.every((each) => lashOf(evidence, each) !== undefined)) return 'lash';
  return sides.every(({ sinks, ratio, claim }) => sinks && ratio.value < claim.ratio) ? 'lifter' : undefined;
}

const ONE_AGAIN = 'read one of them again, small hand first';

/** What settles it, the likeliest first. */
const TEST = {
  lash: 'take the lash of one of them up to zero and read it again; then look at the dial’s travel in a turn, and the unit',
  lifter: 'put a solid or locked lifter under one of them and read it again, at zero lash, small hand first',
  dial: `look at the dial’s travel in a turn, the unit and the lash, and ${ONE_AGAIN}`,
} as const;

const FIRST = {
  lash: 'First: one of them again at zero lash; then dial and unit; then the set.',
  lifter: 'First: one of them again on a solid or locked lifter; then dial, unit and lash; then the set.',
  dial: 'First: dial, unit and lash; then the set.',
} as const;

function lashSaid(evidence: Evidence, sides: readonly Off[]): string {
  const lashes = [...new Set(sides.flatMap((each) => lashOf(evidence, each) ?? []).map(inches))];
  return lashes.length === 1
    ? `The card’s lash of ${lashes[0]}, left in, would make it.`
    : `The card’s lash, ${listed(lashes)}, left in, would make it.`;
}

const WHO = { intake: 'intakes', exhaust: 'exhausts' } as const;

/** `All 8 intakes read alike, about 1.440`; of both sides `All 16 valves read alike: intakes about 1.500, exhausts about 1.501` */
function alikeSaid(sides: readonly Off[]): string {
  const [first] = sides;
  if (first === undefined) return '';
  const figures = [...new Set(sides.map(({ ratio }) => ratioSaid(ratio.value)))];
  const figure =
    figures.length === 1
      ? `, about ${figures[0]}`
      : `, ${listed(sides.map(({ side, ratio }) => `${WHO[side]} about ${ratioSaid(ratio.value)}`))}`;
  return `${allOf(sides)} read alike${figure}`;
}

const allOf = (sides: readonly Off[]): string => {
  const count = sides.reduce((sum, each) => sum + each.count, 0);
  const odd = sides.reduce((sum, each) => sum + (each.odd ?? 0), 0);
  return `${odd === 0 ? `All ${count}` : `${count - odd} of the ${count}`} ${sides.length > 1 ? 'valves' : plural(sides[0]?.side ?? 'valve')}`;
};

/** Valves that are all off: no one arm makes it, and what would is asked. */
function offOf(evidence: Evidence, sides: readonly Off[], asking: boolean): Told {
  const [first] = sides;
  if (first === undefined) return { judgements: [], questions: [] };
  const { side, spring, ratio, claim } = first;
  const both = sides.length > 1;
  const about: Subject = both ? { of: 'build' } : { of: 'side', valve: side };
  const restsOn = sides.flatMap((each) => each.restsOn).sort();
  const away = `${awaySaid(ratio.value, claim.ratio)} ${claimed(first)}`;
  const fits = fitting(evidence, sides) ?? 'dial';
  const question = asked(
    {
      code: 'side-off',
      weight: 'weak',
      ask: `${allOf(sides)} read ${away}. Was the dial, the unit or the lash wrong alike for all of them?`,
      knownBy: 'was the dial the unit or the lash wrong alike for all of them',
      size: fits === 'lash' ? lashSaid(evidence, sides) : '',
      test: TEST[fits],
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
        : `No one arm makes that. ${FIRST[fits]}`;
  return {
    judgements: [
      {
        id: `side:${spring}:${both ? 'both' : side}`,
        about,
        against: { to: claim.to, ratio: claim.ratio },
        sentence: `${alikeSaid(sides)}: ${away}. ${end}`,
        lacks:
          chosen === 'not-found' ? ['the number of the set looked up'] : ['another reading of one of them'],
        restsOn,
      },
    ],
    questions: asking ? [question] : [],
  };
}

/** Two sides are one thing where they are off what they are held to be alike, in the figures that are told. */
function isOne([one, other]: readonly Off[], evidence: Evidence): boolean {
  if (one === undefined || other === undefined) return false;
  return (
    one.claim.ratio === other.claim.ratio &&
    one.claim.to === other.claim.to &&
    awaySaid(one.ratio.value, one.claim.ratio) === awaySaid(other.ratio.value, other.claim.ratio) &&
    fitting(evidence, [one]) === fitting(evidence, [other])
  );
}

/** Sides that are off, both at once where they are so alike. */
export function offTold(
  evidence: Evidence,
  levels: readonly Level[],
  asking: (level: Level) => boolean,
): Told {
  const off = levels.filter(hasBoth);
  const told = [...new Set(off.map(({ spring }) => spring))].flatMap((spring) => {
    const own = off.filter((each) => each.spring === spring);
    const [one, other] = own;
    const together = isOne(own, evidence) && one !== undefined && asking(one) === (other && asking(other));
    return (together ? [own] : own.map((each) => [each])).map((sides) =>
      offOf(evidence, sides, sides.some(asking)),
    );
  });
  return {
    judgements: told.flatMap(({ judgements }) => judgements),
    questions: told.flatMap(({ questions }) => questions),
  };
}

/** Guesses at one slip of a whole side. */
const GUESSES: ReadonlySet<string> = new Set(['hand-read-backwards', 'valve-swapped']);

/** Where both sides are off alike, a slip that would make it of one of them alone is no guess worth a question. */
export function withoutOneSided(
  raised: readonly AssessedQuestion[],
  told: readonly AssessedQuestion[],
): readonly AssessedQuestion[] {
  if (!told.some(({ code, about }) => code === 'side-off' && about.of === 'build')) return raised;
  const isGuess = ({ code, about, weight, answered }: AssessedQuestion) =>
    GUESSES.has(code) && about.of === 'side' && weight === 'weak' && answered === undefined;
  const guesses = raised.filter(isGuess);
  return raised.filter(
    (each) => !isGuess(each) || guesses.filter(({ code }) => code === each.code).length > 1,
  );
}
