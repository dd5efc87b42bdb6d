import { UNITS } from '../../../shared/quantities/units.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import type { Side } from '../../mechanics/assessment/evidence.ts';
import { markQuestions } from '../../mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkQuestion } from '../../mechanics/tip-mark/types.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Limit } from '../../records/limits/known-limits.ts';
import type { TipMark } from '../../records/tip-marks/tip-mark-table.ts';
import { type BuildRecord, limitOf } from '../../records/whole-build/build-record.ts';
import { assessed } from '../assessed.ts';
import { type LeastSweep, leastSweepOf } from './least-sweep.ts';

/** The marks of one valve, what they are set against, and what the newest of them raises. */
export interface MarkedValve {
  readonly cylinder: number;
  readonly valve: Side;
  /** In the order of entry; those that stand. */
  readonly marks: readonly TipMark[];
  readonly least: LeastSweep;
  /** Metres; the least and what the limit allows over it. */
  readonly lookAgainOver: number | undefined;
  readonly questions: readonly MarkQuestion[];
}

export interface JudgedMarks {
  /** All of them, replaced and struck ones included. */
  readonly marks: readonly TipMark[];
  readonly valves: readonly MarkedValve[];
  readonly least: Readonly<Record<Side, LeastSweep>>;
  readonly limit: Limit;
}

const markOf = ({ width, side, off, pushrod }: TipMark): Mark => ({
  width: siOf(width),
  side,
  off: off === undefined ? 0 : siOf(off),
  ...(pushrod === undefined ? {} : { pushrod: siOf(pushrod) }),
});

/** The newest light ratio that was measured on a valve of the side. */
function lightRatio(record: BuildRecord, side: Side): number | undefined {
  const light = assessed(record).details.setUps.filter(
    ({ setUp, result }) => setUp.valve === side && setUp.spring === 'light' && result !== undefined,
  );
  return light.at(-1)?.result?.ratio;
}

/** The marks of a build with what each is set against; the service behind the JSON route and the page. */
export function judgedMarks(record: BuildRecord): JudgedMarks {
  const { build, partReadings: parts, workings, tipMarks: marks } = record;
  const { spec } = build;
  const limit = limitOf(record, 'sweep-over-least');
  const overLeast = limit.value.value * UNITS[limit.value.unit].toSi;
  const leastOf = (side: Side) =>
    leastSweepOf(side, { spec, parts, workings, measured: lightRatio(record, side) });
  const least = { intake: leastOf('intake'), exhaust: leastOf('exhaust') };
  const standing = stillStanding(marks);
  const names = [...new Set(standing.map(({ cylinder, valve }) => `${cylinder} ${valve}`))];
  const ofValve = (name: string) => standing.filter(({ cylinder, valve }) => `${cylinder} ${valve}` === name);
  const valves = names.flatMap((name): MarkedValve[] => {
    const own = ofValve(name);
    const [first] = own;
    if (first === undefined) return [];
    const { cylinder, valve } = first;
    const { value } = least[valve];
    const stem = own.findLast((each) => each.stem !== undefined)?.stem;
    const questions = markQuestions(own.map(markOf), {
      leastSweep: value,
      overLeast,
      mounting: spec.engine?.rockerMounting,
      stem: stem === undefined ? undefined : siOf(stem),
      beside: standing.filter((each) => each.valve === valve && each.cylinder !== cylinder).map(markOf),
    });
    return [
      {
        cylinder,
        valve,
        marks: own,
        least: least[valve],
        lookAgainOver: value === undefined ? undefined : value + overLeast,
        questions,
      },
    ];
  });
  return { marks, valves, least, limit };
}
