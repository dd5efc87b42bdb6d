import { defined } from '../../../../shared/defined.ts';
import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { verdictOfGap } from '../../consequences/gap-row.ts';
import type { ScanMoved } from '../../consequences/scan-gap.ts';
import type { GapRow } from '../../consequences/types.ts';
import { crankSaid } from '../../gap-scan/words.ts';
import type { GapBounds } from '../common/gap-said.ts';
import { type Lack, toRead, toSay } from '../common/lack.ts';
import { inches } from '../common/said.ts';
import type { GapName } from '../evidence.ts';
import { gapId, lacksOfLash, withLash } from '../gaps/gap.ts';
import { bendIn, bendNeeds } from '../gaps/gap-bend.ts';
import { READ_AGAIN } from '../gaps/gap-found-off.ts';
import { sinkingNeeds } from '../gaps/sinks.ts';
import type { GapCell } from '../sheet/rows/cells.ts';
import { isRatioUnknown, WHICH_RATIO } from './arms-asked.ts';
import { isMadeByRatio } from './arms-of-gaps.ts';
import { asTold } from './as-told.ts';
import { becauseOf } from './because.ts';
import type { ChangeGap } from './detail.ts';
import { WHICH_ARMS } from './pushrod-read-with.ts';
import type { Variants } from './spread.ts';
import { atLeast, type GapsAsked, isEither, readThenOf, workedBefore, workedGap } from './worked-gap.ts';
import { worstFirst } from './worst-first.ts';

/** The gap before, with what the interval of the ratio before makes of it. */
/** `up to .040 in off for what bends`: what was read reads larger than it is told. */
function lessOf(name: GapName, { before, evidence }: GapsAsked): string | undefined {
  const entry = before.find((judged) => judged.entry.kind === name)?.entry;
  const bend = entry === undefined ? 0 : bendIn(entry, evidence);
  return bend > 0 ? `up to ${inches(bend)} off for what bends` : undefined;
}

function gapBefore(name: GapName, variants: Variants, asked: GapsAsked): ChangeGap['before'] {
  const before = asked.calculations.before(variants.beforeAlone, name);
  if (before === undefined) return undefined;
  if (before.basis === 'measured')
    return { ...atLeast(name, before, asked), ...defined({ less: lessOf(name, asked) }) };
  return { ...asTold(workedBefore(name, before, variants, asked)), basis: 'calculated' };
}

/** With another ratio the least moves; past the end of what was read it is not found. */
function scanGoesOn(needs: readonly Lack[], moved: ScanMoved | undefined): Lack[] {
  if (moved === undefined || moved.after.edge === 'none' || needs.length > 0) return [];
  const way = moved.after.edge === 'first' ? 'earlier' : 'later';
  return [
    toRead(
      'scan-onward',
      `the scan read on at ${way} crank angles than ${crankSaid(moved.after.crankAngle)}: with that ratio its least moves past what was read`,
    ),
  ];
}

/** At full lift the lash is out of the room there is; what is taken at no lash, or from the ratio itself, needs it. */
const NEEDS_NO_LASH: readonly GapName[] = ['piston-to-valve', 'pushrod-to-head'];

const MEASURED = 'the gap measured on the engine';
const measured = toRead('gap-measured', MEASURED);

/** What has to be known before a calculated gap may be judged. */
function heldBy(name: GapName, asked: GapsAsked): Lack[] {
  const { evidence, after, before, moved } = asked;
  const read = before.find(({ entry }) => entry.kind === name);
  const from = read?.entry;
  return [
    ...(from !== undefined && asked.unsaid
      ? [isRatioUnknown(evidence, sideOfValve(from.valve)) ? measured : WHICH_RATIO]
      : []),
    ...(after?.lacks ?? []),
    ...(asked.denied?.lacks ?? []),
    ...(after?.lashIn && NEEDS_NO_LASH.includes(name)
      ? [toSay('lash-of-ratio', 'the setting of the lash that was left in, or a reading at zero lash')]
      : []),
    ...(isEither(name, asked) && evidence.rockers.pivotToTip === undefined ? [WHICH_ARMS] : []),
    ...(read?.foundOff === true ? [READ_AGAIN] : []),
    ...(read?.doubts ?? []),
    ...(from === undefined
      ? []
      : [...sinkingNeeds(from, evidence), ...(from.scan?.needs ?? read?.cam?.needs ?? [])]),
    ...(name === 'piston-to-valve' ? scanGoesOn(from?.scan?.needs ?? [], moved) : []),
  ];
}

type GapAsked = GapRow & Pick<ChangeGap, 'before' | 'readThen'>;

/**
 * What would tell a gap from its limit: often the light-spring ratio, of an arm that nobody has measured or of one read on
 * the running spring. Valve and piston are measured whatever the ratio.
 */
function tellsIt(name: GapName, asked: GapsAsked): Lack {
  const { after, bend } = asked;
  if (isEither(name, asked)) return WHICH_ARMS;
  if (bend > 0) return toRead('light-spring', `a light-spring ratio, or ${MEASURED}`);
  if (after === undefined || after.from === 'measured' || name === 'piston-to-valve') return measured;
  const first = asked.isOtherRead ? 'the first new arm' : 'the first arm';
  const arms = asked.isFirstRead
    ? 'the arms of these valves read on a light spring too'
    : `${first} read on a light spring`;
  return toRead('first-arm', `${arms}, or ${MEASURED}`);
}

/** Somebody looked, and what it is worked out from was read or written wrong. */
const isFoundWrong = ({ code }: Lack): boolean => code === 'scan-wrong';

function calculated(row: GapAsked, worked: GapBounds, asked: GapsAsked): ChangeGap {
  const name = row.name;
  const judged = asked.before.find(({ entry }) => entry.kind === name);
  const lash = judged?.lash;
  const { atWorst: gap, hangs } = withLash(worked, row.limit.value, lash);
  // What the sheet asks already is not asked again.
  const isOfSheet = judged?.entry.otherArms !== undefined && judged.asksLash;
  const [ofLash] =
    judged === undefined
      ? []
      : (lacksOfLash(judged.entry, verdictOfGap(worked, row.limit.value), lash, hangs) ?? []);
  const lacks = heldBy(name, asked);
  const bare = verdictOfGap(gap, row.limit.value);
  const word = lacks.length > 0 && (bare !== 'short' || lacks.some(isFoundWrong)) ? undefined : bare;
  const from = judged?.entry;
  // What was read on a spring that the train bends under is told from its limit by a light one.
  const bends = from === undefined ? [] : bendNeeds(from);
  return {
    name,
    title: row.of === undefined ? row.title : `${row.title} of ${row.of}`,
    ...defined({ before: row.before, readThen: row.readThen }),
    after: { ...gap, basis: isEither(name, asked) ? 'calculated' : (row.after?.basis ?? 'calculated') },
    limit: row.limit,
    ...(gap.value === undefined ? {} : { margin: gap.value - row.limit.value }),
    ...defined({ word }),
    because: becauseOf(name, asked, word),
    lacks: word === 'close' ? [ofLash ?? bends[0] ?? tellsIt(name, asked)] : lacks,
    ...(!isOfSheet && (hangs || lash?.question.answered !== undefined)
      ? defined({ lashAsked: lash?.question })
      : {}),
    measure: false,
    // The sheet has told the gap itself, as it is with the arms that it was read with.
    judgementId: `${gapId(name, asked.about)}${from?.otherArms !== undefined || asked.told.has(name) ? ':worked-out' : ''}${asked.planKey}`,
    restsOn: [...(asked.after?.restsOn ?? []), ...(from === undefined ? [] : [from.id])].sort(),
  };
}

function read(
  { judged, judgement }: GapCell,
  row: GapAsked,
  { worked, workedFrom }: Pick<ChangeGap, 'worked' | 'workedFrom'>,
): ChangeGap {
  const { gap, limit, word, lacks } = judged;
  return {
    ofSheet: true,
    ...defined({ worked, workedFrom, before: row.before, readThen: row.readThen }),
    name: row.name,
    title: row.title,
    after: { ...gap, basis: 'measured' },
    limit,
    ...(gap.value === undefined ? {} : { margin: gap.value - limit.value }),
    ...defined({ word }),
    because: [],
    lacks,
    measure: false,
    judgementId: judgement.id,
    restsOn: judgement.restsOn,
  };
}

/** What it is calculated from and nobody said; of one that nothing but a reading tells, that reading. */
const lacksOf = ({ missing, measure }: GapRow): Lack[] =>
  missing.map((each) => (measure ? toRead('gap-measured', each) : toSay('input', each)));

function gapOf(name: GapName, variants: Variants, asked: GapsAsked): ChangeGap {
  const row: GapAsked = {
    ...asked.calculations.row(variants.middle, name),
    ...defined({
      before: gapBefore(name, variants, asked),
      readThen: readThenOf(name, variants, asked),
    }),
  };
  const here = asked.measured.find(({ judged }) => judged.entry.kind === name);
  const { title, before, after, limit, measure } = row;
  const worked = after === undefined ? undefined : workedGap(name, variants, asked);
  const workedFrom = asked.before.find(({ entry }) => entry.kind === name)?.entry.id;
  if (here !== undefined) return read(here, row, { ...defined({ worked, workedFrom }) });
  if (worked !== undefined) return calculated(row, worked, asked);
  const shown = before === undefined ? {} : { before };
  // Of a valve gear that no one ratio makes nothing is worked out, whatever were said: it is measured.
  const isMeasured = measure || !isMadeByRatio(asked.evidence);
  const lacks = isMeasured && !measure ? [measured] : lacksOf(row);
  return { name, title, ...shown, limit, because: [], lacks, measure: isMeasured, restsOn: [] };
}

/** Every gap of one valve or side, worst first: measured where it was read, else calculated, else what it lacks. */
export const gapsOf = (variants: Variants, asked: GapsAsked): ChangeGap[] =>
  worstFirst(GAP_KINDS.map((name) => gapOf(name, variants, asked)));
