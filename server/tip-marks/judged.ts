import { UNITS } from '../../shared/quantities/units.ts';
import { siOf } from '../../shared/schemas/entered.ts';
import type { Caller } from '../access/caller.ts';
import { getBuild } from '../builds/builds.ts';
import type { Tx } from '../database/database.ts';
import { listPartReadings } from '../identification/part-readings.ts';
import type { Limit } from '../limits/known-limits.ts';
import { limitsInForce } from '../limits/limits.ts';
import { markQuestions } from '../mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkQuestion } from '../mechanics/tip-mark/types.ts';
import { setUpRatio } from '../readings/ratio.ts';
import { stillStanding } from '../record/corrections/entries.ts';
import { listSetUps } from '../set-ups/set-ups.ts';
import { listWorkings, type Working } from '../workings/workings.ts';
import { type LeastSweep, leastSweepOf } from './least-sweep.ts';
import type { TipMark } from './tip-mark-table.ts';
import { listTipMarks } from './tip-marks.ts';

type Side = 'intake' | 'exhaust';

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
async function lightRatio(tx: Tx, caller: Caller, buildId: string, side: Side): Promise<number | undefined> {
  const setUps = await listSetUps(tx, caller, buildId);
  for (const setUp of setUps.toReversed()) {
    if (setUp.valve !== side || setUp.method.spring !== 'light') continue;
    const { result } = await setUpRatio(tx, caller, buildId, setUp.id);
    if (result !== undefined) return result.ratio;
  }
  return undefined;
}

/** The marks of a build with what each is set against; the service behind the JSON route and the page. */
export async function judgedMarks(
  tx: Tx,
  caller: Caller,
  buildId: string,
  known?: { readonly workings: readonly Working[] },
): Promise<JudgedMarks> {
  const { spec } = await getBuild(tx, caller, buildId);
  const parts = await listPartReadings(tx, caller, buildId);
  const workings = known?.workings ?? (await listWorkings(tx, caller, buildId));
  const marks = await listTipMarks(tx, caller, buildId);
  const limit = (await limitsInForce(tx, caller.shopId)).get('sweep-over-least');
  if (limit === undefined) throw new Error('there is no limit for the sweep');
  const overLeast = limit.value.value * UNITS[limit.value.unit].toSi;
  const leastOf = async (side: Side) =>
    leastSweepOf(side, { spec, parts, workings, measured: await lightRatio(tx, caller, buildId, side) });
  const least = { intake: await leastOf('intake'), exhaust: await leastOf('exhaust') };
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
