import type { AnswerChoice, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { listed, ratioSaid, upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { awaySaid } from '../ratio/ratio-said.ts';
import { manySaid, together } from './how-many.ts';
import { openOnceRead } from './read-since.ts';
import type { Level } from './side-level.ts';
import { ASK, FIRST, fitting, hasBoth, lashSaid, type Off, TEST, unfitting } from './side-off-cause.ts';
import { claimed, plural, SIDE_OFF, type Told } from './side-words.ts';

const OFF: readonly AnswerChoice[] = [
  {
    code: 'set-up',
    label: 'It was the dial, the unit, the lash or the lifters',
    changes: 'All of them are read again; what was read wrong is struck out with the reason.',
  },
  {
    code: 'not-found',
    label: 'Looked: they were read right',
    changes: 'Then it is another set than it is held to be: its number is looked up.',
  },
];

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
  const { count, ...out } = together(sides);
  const odd = sides.reduce((sum, each) => sum + (each.odd ?? 0), 0);
  const what = sides.length > 1 ? 'valves' : plural(sides[0]?.side ?? 'valve');
  return upperFirst(manySaid({ ...out, count: count - odd }, what));
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
  const fits = fitting(evidence, sides) ?? unfitting(sides);
  const put = asked(
    {
      code: SIDE_OFF,
      weight: 'weak',
      ask: `${allOf(sides)} read ${away}. ${ASK[fits]}`,
      knownBy: 'was the dial the unit or the lash wrong alike for all of them',
      size: fits === 'lash' ? lashSaid(evidence, sides) : '',
      test: TEST[fits],
      restsOn,
    },
    { about, step: 'sheet', among: spring, answers: evidence.answers, choices: OFF },
  );
  const places = evidence.sheet.filter(({ id }) => restsOn.includes(id));
  const question = openOnceRead(evidence, put, spring, (answer) => (answer === 'set-up' ? places : []));
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
