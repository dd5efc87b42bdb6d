import { defined } from '../../../../shared/defined.ts';
import { isSolidLifter } from '../../../../shared/lifters.ts';
import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { verdictOfGap } from '../../consequences/gap-row.ts';
import { byText } from '../../kit/by-text.ts';
import type { Judgement } from '../assessment.ts';
import { ended } from '../common/first-said.ts';
import { type GapBounds, gapSaid } from '../common/gap-said.ts';
import { type Lack, lacksSaid, toRead, toSay } from '../common/lack.ts';
import { limitOf } from '../common/limits.ts';
import { inches, keyOf, placeOf, upperFirst, valveSubject } from '../common/said.ts';
import type { Evidence, GapName, LimitEvidence, SheetEvidence } from '../evidence.ts';
import { type CamInGap, camInGap } from '../timing/cam-then.ts';
import type { GapWord } from '../words.ts';
import { boundsOf } from './bounds.ts';
import { isFoundWrong } from './found-wrong.ts';
import { bendIn, bendNeeds } from './gap-bend.ts';
import { type GapReading, READ_AGAIN } from './gap-found-off.ts';
import { LASH_UNSAID, type LashInGap, lashInGap, ZERO_LASH } from './gap-lash.ts';
import { slipNeeds, slipOfGap } from './gap-slip.ts';
import { readApartSaid } from './read-apart.ts';
import { withArms } from './with-arms.ts';

/** One gap as it was read, with what it lies between and how it stands against its limit. */
export interface JudgedGap {
  readonly entry: GapReading;
  readonly gap: GapBounds;
  readonly limit: LimitEvidence;
  readonly word?: GapWord;
  readonly lacks: readonly Lack[];
  /** Lash that may be in it, with what is asked of it. */
  readonly lash?: LashInGap;
  /** What is asked of it since the cam was found off, or in two places. */
  readonly cam?: CamInGap;
  /** Somebody found that it is off. */
  readonly foundOff?: boolean;
  /** What its own figure is asked, before anything rests on it. */
  readonly doubts?: readonly Lack[];
  /** It was read more than once, as gaps that can’t be one: what is said of that. */
  readonly apart?: string;
  /** Its word hangs on that lash, so that it is asked. */
  readonly asksLash: boolean;
}

/** What a gap still needs that may read too large, because the lifter under it sinks. */
export function sinkingNeeds({ lifter }: Pick<SheetEvidence, 'lifter'>, evidence: Evidence): Lack[] {
  if (lifter === 'hydraulic')
    return [
      toRead(
        'lifter-sinks',
        'a reading on a solid or locked lifter: a hydraulic one sinks, and this reads too large',
      ),
    ];
  if (lifter === 'not-said' && !isSolidLifter(evidence.engine.lifter))
    return [
      toSay(
        'which-lifter',
        'which lifter it was read on: a hydraulic one sinks, and the gap reads too large',
      ),
    ];
  return [];
}

function bent(entry: JudgedGap['entry'], gap: GapBounds, evidence: Evidence): GapBounds {
  return gap.low === undefined ? gap : { ...gap, low: gap.low - bendIn(entry, evidence) };
}

/** On a lifter that sinks a gap reads too large by nobody knows how much: only its high end is told. */
function sunk(entry: JudgedGap['entry'], gap: GapBounds, evidence: Evidence): GapBounds {
  return gap.high === undefined || sinkingNeeds(entry, evidence).length === 0 ? gap : { high: gap.high };
}

/** A guess that something is left tells nothing against a limit; one that nothing is left is looked into as any other. */
const isMereGuess = ({ tool, reading: { value, high } }: SheetEvidence): boolean =>
  tool === 'guess' && (value ?? high ?? 1) > 0;

function lacksOf(entry: JudgedGap['entry'], word: GapWord | undefined): Lack[] {
  return [
    ...(word === 'close' ? bendNeeds(entry) : []),
    ...(word === 'close' && (entry.scan?.lash ?? 0) > 0
      ? [toRead('scan-zero-lash', 'a scan at zero lash: with lash in it reads that much larger')]
      : []),
    ...(word === 'close'
      ? [toRead('closer-reading', 'a closer reading: this one does not tell it from the limit')]
      : []),
  ];
}

/**
 * Lash that was left in takes its whole size off the low end: told where a word hangs on it. `atWorst` has it off unless the
 * gap is clear all the same, for what is worked out from a reading: it may be that much less in whatever is planned.
 */
export function withLash<Gap extends GapBounds>(
  gap: Gap,
  limit: number,
  lash: LashInGap | undefined,
): { readonly gap: Gap; readonly atWorst: Gap; readonly hangs: boolean } {
  if (lash === undefined || lash.most <= 0 || gap.low === undefined)
    return { gap, atWorst: gap, hangs: false };
  const less = { ...gap, low: gap.low - lash.most };
  const word = verdictOfGap(less, limit);
  const hangs = word === 'close';
  return { gap: hangs ? less : gap, atWorst: word === 'clear' ? gap : less, hangs };
}

/**
 * What the lash leaves to be said or read, where the word hangs on it. Where the gap is as close without it, since the
 * train bends in it, whatever is answered of the lash tells nothing: a light spring does, and goes first.
 */
export function lacksOfLash(
  entry: GapReading,
  without: GapWord,
  lash: LashInGap | undefined,
  hangs: boolean,
): Lack[] | undefined {
  if (!hangs || lash === undefined) return undefined;
  const bends = without === 'close' ? bendNeeds(entry) : [];
  if (bends.length > 0) return bends;
  if (lash.question.answered === undefined) return [LASH_UNSAID];
  return lash.isIn ? [ZERO_LASH] : undefined;
}

export function judgeGap(entry: JudgedGap['entry'], evidence: Evidence): JudgedGap {
  const limit = limitOf(evidence, entry.kind, sideOfValve(entry.valve));
  const read = sunk(entry, bent(entry, boundsOf(entry), evidence), evidence);
  const lash = lashInGap(entry, evidence);
  const { gap, hangs } = withLash(read, limit.value, lash);
  const asksLash = hangs || lash?.question.answered !== undefined;
  const cam = camInGap(entry, evidence);
  const slip = slipOfGap(evidence, entry);
  const foundOff = isFoundWrong(entry, evidence);
  const doubts = slip?.answered?.found === true ? [] : slipNeeds(slip);
  const more = { ...defined({ lash, cam, apart: readApartSaid(entry, evidence) }), foundOff, doubts };
  const bare = verdictOfGap(gap, limit.value);
  if (isMereGuess(entry))
    return {
      entry,
      gap,
      limit,
      asksLash: false,
      lacks: [toRead('with-a-tool', 'a reading with a tool: this one is a guess')],
      ...more,
    };
  const needs = [
    ...(foundOff ? [READ_AGAIN] : []),
    ...doubts,
    ...(entry.otherArms === 'off-since'
      ? [
          toRead(
            'arm-on-now',
            'a reading with the arm that sits there now: this one is of an arm that is off',
          ),
        ]
      : []),
    ...sinkingNeeds(entry, evidence),
    ...(entry.scan?.needs ?? cam?.needs ?? []),
  ];
  // What reads too large, or is not the least yet, and is short all the same is short; else it tells nothing.
  if (needs.length > 0 && bare !== 'short') return { entry, gap, limit, asksLash, lacks: needs, ...more };
  const lacks = lacksOfLash(entry, verdictOfGap(read, limit.value), lash, hangs) ?? lacksOf(entry, bare);
  return { entry, gap, limit, word: bare, lacks, asksLash, ...more };
}

const RANK: Readonly<Record<GapWord, number>> = { short: 0, close: 1, clear: 3 };
const rankOf = ({ word }: JudgedGap): number => (word === undefined ? 2 : RANK[word]);
/** One of which only the high end is told, on a lifter that sinks, says no more than that it is less than that. */
const leastOf = ({ gap }: JudgedGap): number => gap.low ?? gap.value ?? gap.high ?? Number.NEGATIVE_INFINITY;

/** Read before the cam or the arm was changed, or found off, and not short: it says nothing of the gap as it is. */
const isOutdated = ({ word, entry, cam, foundOff }: JudgedGap): boolean =>
  word === undefined &&
  (entry.scan?.camMoved === true ||
    cam?.moved === true ||
    foundOff === true ||
    entry.otherArms === 'off-since');

/** Those that say something of the gap as it is; where none does, all. */
export function ofNow(gaps: readonly JudgedGap[]): readonly JudgedGap[] {
  const holding = gaps.filter((gap) => !isOutdated(gap));
  return holding.length === 0 ? gaps : holding;
}

/** Its own figure is in question, and the other was read as less and has its word: that one stands meanwhile. */
const isBeside = (doubted: JudgedGap, other: JudgedGap): boolean =>
  (doubted.doubts ?? []).length > 0 &&
  doubted.word === undefined &&
  other.word !== undefined &&
  leastOf(other) < leastOf(doubted);

/** The worst of several readings of one gap: it stands until a person strikes it out. */
export function worstOf(gaps: readonly JudgedGap[]): JudgedGap | undefined {
  const held = ofNow(gaps);
  return held
    .filter((gap) => !held.some((other) => isBeside(gap, other)))
    .toSorted(
      (a, b) => rankOf(a) - rankOf(b) || leastOf(a) - leastOf(b) || byText(a.entry.id, b.entry.id),
    )[0];
}

export const gapId = (name: GapName, about: Judgement['about']): string => `gap:${name}:${keyOf(about)}`;

/** What is told of a gap that was read, with how many other readings it stands against. */
export function gapJudgement(judged: JudgedGap, others: number): Judgement {
  const { entry, gap, limit, word, lacks, apart } = judged;
  const about = valveSubject(entry);
  const arms = entry.otherArms === undefined ? '' : ` ${withArms(entry)}`;
  const said = `${SHEET_KINDS[entry.kind]}, ${placeOf(entry)}${arms}: ${gapSaid(gap)}, ${entry.tool === 'guess' ? 'guessed' : 'measured'}${entry.scan === undefined ? '' : ` in a scan${entry.scan.where}`}, against ${inches(limit.value)}`;
  const worst =
    apart !== undefined
      ? ` ${upperFirst(apart)}.`
      : others > 0
        ? ' It is the worst of what was read, and stands until it is struck out.'
        : '';
  const end =
    word === undefined
      ? ended(`no word yet. It needs ${lacksSaid(lacks).join('; ')}`)
      : word === 'short'
        ? 'short. Stop, and have a qualified shop look.'
        : word === 'close'
          ? ended(`close. It needs ${lacksSaid(lacks).join(', and ')}`)
          : 'clear.';
  return {
    id: gapId(entry.kind, about),
    about,
    against: { to: 'limit', gap: entry.kind, limit: limit.value, source: limit.source },
    ...defined({ word }),
    sentence: `${upperFirst(said)}: ${end}${worst}`,
    lacks: lacksSaid(lacks),
    restsOn: [entry.id],
  };
}
