import { defined } from '../../../../shared/defined.ts';
import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { type GapBounds, gapSaid } from '../common/gap-said.ts';
import { type Lack, toRead, toSay } from '../common/lack.ts';
import { inches, placeOf } from '../common/said.ts';
import type { Evidence, GapName, SheetEvidence } from '../evidence.ts';
import { bendIn } from '../gaps/gap-bend.ts';
import { AGAINST_CALCULATED, againstCalculated, figureOf, type GapReading } from '../gaps/gap-found-off.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';
import { worstFirst } from './worst-first.ts';

/** What each calculation is made of, to be gone over. */
const MADE_OF: Readonly<Partial<Record<GapName, string>>> = {
  'piston-to-valve': 'closed gap at TDC, stroke, rod length, valve angle and the cam’s centreline',
  'coil-bind': 'installed height and coil-bind height of the springs',
  'retainer-to-seal': 'retainer to seal with the valve shut',
  'pushrod-to-head': 'the same gap with the arms before, and pivot to tip',
};

/** What was worked out from a reading with other arms is made of that reading. */
const MADE_OF_READING = 'how each of the two was read';

const OF_BOTH: Readonly<Record<'scan' | 'reading', string>> = {
  scan: `${MADE_OF_READING}: base, lash, the wheel’s zero and timing; then the ratio of the arms that the earlier one was read with, and the lobe’s lift there`,
  reading: `${MADE_OF_READING}: tool, spring, lifter and lash; then the ratio of the arms that the earlier one was read with`,
};

/** With nothing turned: what to go over where a reading and a calculation exclude each other. */
function madeOf(name: GapName, { from }: TwoWays, { sheet }: Pick<Evidence, 'sheet'>): string | undefined {
  const earlier = sheet.find(({ id }) => id === from);
  if (earlier !== undefined) return OF_BOTH[earlier.scan === undefined ? 'reading' : 'scan'];
  const figures = MADE_OF[name];
  return figures && `${figures}, as entered`;
}

/** What such a gap waits for: the answer which of the two is off. */
const readOrWorked = ({ goneOver }: ReadOrWorked): Lack =>
  toSay('read-or-worked', goneOver, AGAINST_CALCULATED);

/** The same once it is said that the reading holds: one of the figures is off, and nothing that comes out of them tells a gap. */
const measuredItself = ({ title }: ChangeGap): Lack =>
  toRead(
    'gap-measured',
    `the gap measured on the engine, or its figures put right: a reading of ${title.toLowerCase()} holds, and is less than what comes out of them`,
  );

type Worked = Pick<ChangeDetail, 'about' | 'gaps' | 'plan'>;

const isOfGap = (entry: SheetEvidence): entry is GapReading => GAP_KINDS.some((kind) => kind === entry.kind);

/** One gap as it was read, and as it comes out with the arms that it was read with. */
interface TwoWays {
  readonly ids: readonly string[];
  readonly read: GapBounds;
  readonly worked?: GapBounds;
  /** The reading with other arms that it comes out of. */
  readonly from?: string;
}

/** Read with the arms that it is told of, with others, or with both. */
function twoWays({ after, ofSheet, worked, workedFrom, readThen, restsOn }: ChangeGap): TwoWays[] {
  return [
    ...(after === undefined || ofSheet !== true
      ? []
      : [{ ids: restsOn, read: after, ...defined({ worked, from: workedFrom }) }]),
    ...(readThen === undefined
      ? []
      : [{ ids: [readThen.entryId], read: readThen.gap, worked: readThen.worked }]),
  ];
}

/** Read less than it can come out at, or more: the two exclude each other. */
function apart({ read: { low, high }, worked }: TwoWays): 'less' | 'more' | undefined {
  if (worked === undefined) return undefined;
  if (high !== undefined && worked.low !== undefined && high < worked.low) return 'less';
  return low !== undefined && worked.high !== undefined && low > worked.high ? 'more' : undefined;
}

interface ReadOrWorked {
  readonly name: GapName;
  readonly question: AssessedQuestion;
  /** Read less than can come out: while the reading is not found off it speaks against every gap of these figures. */
  readonly isLess: boolean;
  /** What is gone over, as a thing that a gap needs. */
  readonly goneOver: string;
}

/** As it was read; what is taken off that is told with why, so that no reading has two figures. */
function sizeOf(entry: GapReading, { read, worked }: TwoWays, evidence: Evidence): string {
  const out = worked === undefined ? '' : `, and comes out at ${gapSaid(worked)}`;
  const bend = bendIn(entry, evidence);
  if (bend <= 0) return `It was read ${gapSaid(read)}${out}.`;
  const spring = entry.spring === 'running' ? 'the running spring' : 'a spring that nobody named';
  return `It was read ${figureOf(entry)} on ${spring}. With up to ${inches(bend)} taken off for what bends it is ${gapSaid(read)}${out}.`;
}

function askedOf(name: GapName, two: TwoWays, evidence: Evidence): ReadOrWorked[] {
  const { answers, sheet } = evidence;
  const figures = madeOf(name, two, { sheet });
  const entry = sheet.filter(isOfGap).find(({ id }) => two.ids.includes(id));
  if (figures === undefined || entry === undefined) return [];
  const way = apart(two);
  const sum = two.worked === undefined ? '' : `: calculated it would be ${gapSaid(two.worked)}`;
  const question = againstCalculated(
    entry,
    {
      weight: way === 'less' ? 'strong' : 'weak',
      size: sizeOf(entry, two, evidence),
      test: `With nothing turned: go over the ${figureOf(entry)} as it was put down, and ${figures}${sum}.`,
    },
    answers,
  );
  return way === undefined && question.answered === undefined
    ? []
    : [
        {
          name,
          question,
          isLess: way === 'less',
          goneOver: `the ${figureOf(entry)} read on ${placeOf(entry)} gone over${sum}`,
        },
      ];
}

/**
 * A gap that was read and comes out as another by calculation: one of the figures is off. Where less was read, the others
 * that are calculated from the same figures are in doubt as well. What was answered stays in sight while its reading stands.
 */
export const readAgainstWorked = (evidence: Evidence, details: readonly Worked[]): ReadOrWorked[] =>
  details.flatMap(({ gaps }) =>
    gaps.flatMap((gap) => twoWays(gap).flatMap((two) => askedOf(gap.name, two, evidence))),
  );

/** What is calculated from figures that a reading speaks against has no word, unless it is short all the same. */
export function untilWorkedIsSure<Detail extends Worked>(
  details: readonly Detail[],
  asked: readonly ReadOrWorked[],
): Detail[] {
  // Where the reading itself was found to be off it speaks against no figure. That it holds closes its question alone: the
  // figures are off then, until they are put right.
  const doubted = asked.filter(({ isLess, question }) => isLess && question.answered?.found !== true);
  if (doubted.length === 0) return [...details];
  // What is worked out from a reading rests on that one, and not on the figures.
  const doubtsOf = (gap: ChangeGap): readonly ReadOrWorked[] =>
    gap.after?.basis === 'calculated' && gap.before?.basis !== 'measured'
      ? doubted.filter(({ name }) => name === gap.name)
      : [];
  const held = (gap: ChangeGap): ChangeGap => {
    const doubts = doubtsOf(gap);
    if (doubts.length === 0 || gap.word === 'short') return gap;
    const { word: _, ...open } = gap;
    const waits = doubts.find(({ question }) => question.answered === undefined);
    return { ...open, lacks: [waits === undefined ? measuredItself(gap) : readOrWorked(waits)] };
  };
  return details.map((detail) => ({ ...detail, gaps: worstFirst(detail.gaps.map(held)) }));
}
