import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import type {
  BenchRatioDetail,
  HoleDetail,
  PartDetail,
  StudDetail,
} from '../../mechanics/assessment/part/detail.ts';
import { namedThreads } from '../../mechanics/assessment/part/holes.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import type { PartSeen } from './of-part.ts';

type Lines = (entryIds: readonly string[]) => number[];

const linesIn =
  (readings: readonly PartReading[]): Lines =>
  (entryIds) =>
    readings.filter(({ id }) => entryIds.includes(id)).map(({ seq }) => seq);

function holeComponent(same: readonly HoleDetail[], index: number, lines: Lines, verb: string): Component[] {
  const [first] = same;
  if (first === undefined) return [];
  const threads = namedThreads(first);
  return [
    {
      template: '/parts/result',
      data: {
        id: `fastener-${index}`,
        label: `Fastener the hole takes, by ${same.map(({ readAs }) => asEntered(readAs)).join(' and ')}`,
        ...(threads.length === 0 ? { none: 'None of the usual ones' } : { value: threads.join(' or ') }),
        verdict: { word: first.word, text: first.said },
        basis: [
          ...(first.ask === undefined ? [] : [`${verb} ${first.ask}`]),
          ...first.cautions.map(inSpoken),
        ].join(' '),
        restsOn: lines(same.map(({ entryId }) => entryId)),
      },
    },
  ];
}

/** Readings that say the same are told once; a hole read at two sizes gives two answers. */
function holeComponents(holes: readonly HoleDetail[], lines: Lines, verb: string): Component[] {
  const told = new Map<string, HoleDetail[]>();
  for (const hole of holes) {
    const key = hole.threads.map(({ designation, fit }) => `${designation} ${fit}`).join();
    told.set(key, [...(told.get(key) ?? []), hole]);
  }
  return [...told.values()].flatMap((same, index) => holeComponent(same, index, lines, verb));
}

const COVER = { id: 'cover', label: 'Room under the valve cover, sideways' };

function coverComponent({ cover, coverLacks }: PartDetail, lines: Lines): Component[] {
  if (cover !== undefined)
    return [
      {
        template: '/parts/result',
        data: {
          ...COVER,
          value: asEntered(cover.readAs),
          verdict: { word: cover.word, text: `${cover.reason}.` },
          basis: `Settled by ${cover.settledBy}.`,
          restsOn: lines([cover.entryId]),
        },
      },
    ];
  return coverLacks === undefined
    ? []
    : [{ template: '/parts/result', data: { ...COVER, none: coverLacks } }];
}

const STUD = { id: 'stud', label: 'Stud or bolt that came out' };

function studComponent(stud: StudDetail | undefined, lines: Lines): Component[] {
  if (stud === undefined) return [];
  const { named, sentence, lacks } = stud;
  return [
    {
      template: '/parts/result',
      data: {
        ...STUD,
        ...(named.length === 0 ? { none: 'No ordinary thread' } : { value: named.join(' or ') }),
        basis: [sentence, ...(lacks === undefined ? [] : [lacks])].join(' '),
        restsOn: lines(stud.entryIds),
      },
    },
  ];
}

const BENCH = { id: 'bench-ratio', label: 'Ratio by the arms, a bench estimate' };

function benchRatioComponent(found: BenchRatioDetail | undefined, lines: Lines): Component[] {
  if (found === undefined) return [];
  const { entryIds } = found;
  const data =
    found.lacks === undefined
      ? { value: `${found.value}, ${found.interval}`, basis: found.sentence, restsOn: lines(entryIds) }
      : { none: found.lacks };
  return [{ template: '/parts/result', data: { ...BENCH, ...data } }];
}

/** What follows from hole, stud, width and arms. */
export function followingComponents(
  { side }: Pick<CallContext, 'side'>,
  { standing, detail }: PartSeen,
): Component[] {
  const lines = linesIn(standing);
  return [
    ...holeComponents(detail.holes, lines, side === 'desk' ? 'Ask' : 'Read'),
    ...studComponent(detail.stud, lines),
    ...coverComponent(detail, lines),
    ...benchRatioComponent(detail.benchRatio, lines),
  ];
}
