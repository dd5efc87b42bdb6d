import { z } from 'zod';
import { InputFaults } from '../../shared/problems/faults.ts';
import { UNITS, type Unit } from '../../shared/quantities/units.ts';
import type { BuildSpec } from '../../shared/schemas/build-spec.ts';
import { siOf } from '../../shared/schemas/entered.ts';
import { NOMINAL_RATIOS } from '../../shared/schemas/method.ts';
import type { Caller } from '../access/caller.ts';
import { specAt } from '../builds/revisions.ts';
import { encoderFor } from '../compute/encode.ts';
import type { Tx } from '../database/database.ts';
import { computation as ratioAtFullLift } from '../mechanics/computations/ratio-at-full-lift.ts';
import { questionsFor } from '../mechanics/questions/questions.ts';
import type { Question } from '../mechanics/questions/types.ts';
import { stillStanding } from '../record/corrections/entries.ts';
import { getSetUp, listSetUps, type SetUp } from '../set-ups/set-ups.ts';
import { type LobeReadings, lobeReadings } from './lobe-readings.ts';
import { questionInput } from './question-input.ts';
import { listReadings, type Reading } from './readings.ts';

type RatioInput = Parameters<typeof ratioAtFullLift.compute>[0];
type RatioResult = ReturnType<typeof ratioAtFullLift.compute>;

/** The ratio of one set-up, or what it still lacks; and what must be asked before it is believed. */
export interface SetUpRatio {
  readonly setUp: SetUp;
  readonly spec: BuildSpec;
  readonly readings: readonly Reading[];
  /** The passes of the lobe, its own or an earlier set-up's. */
  readonly lobe: LobeReadings;
  /** The readings that the result is reckoned from, in the order of entry. */
  readonly rests: readonly Reading[];
  readonly input: RatioInput | undefined;
  readonly result: RatioResult | undefined;
  readonly missing: readonly string[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
}

const kindOf = (readings: readonly Reading[], kind: string) =>
  readings.filter((reading) => reading.kind === kind);

/** Nominals that the reading is set against: the common ones, and what the rockers are sold as. */
export function nominalsFor(spec: BuildSpec): number[] {
  const own = spec.rockers?.nominalRatio;
  const all = own === undefined ? [...NOMINAL_RATIOS] : [...new Set([...NOMINAL_RATIOS, own])];
  return all.sort((a, b) => a - b);
}

function lobeOf(spec: BuildSpec, setUp: SetUp) {
  return spec.cam?.[setUp.valve];
}

function lobeInput(
  spec: BuildSpec,
  setUp: SetUp,
  readings: readonly Reading[],
): RatioInput['lobeLift'] | string {
  const errorLimit = siOf(setUp.method.lobeErrorLimit);
  if (setUp.method.lobeSource === 'card') {
    const lobe = lobeOf(spec, setUp)?.lobeLift;
    if (lobe === undefined) return `the ${setUp.valve} lobe lift on the cam card`;
    return { value: siOf(lobe), errorLimit, source: 'card' };
  }
  const lifts = kindOf(readings, 'lobe-lift').map((reading) => siOf(reading.peak));
  if (lifts.length === 0) return 'a pass of the lobe lift';
  if (setUp.method.lobeSource === 'caliper') {
    return {
      value: lifts.reduce((sum, lift) => sum + lift, 0) / lifts.length,
      errorLimit,
      source: 'caliper',
    };
  }
  return { readings: lifts, graduation: siOf(setUp.method.graduation), errorLimit };
}

/** What `ratio-at-full-lift` is computed from, or the things that are still missing for it. */
export function ratioInput(
  spec: BuildSpec,
  setUp: SetUp,
  readings: readonly Reading[],
): { input: RatioInput; missing: [] } | { input: undefined; missing: string[] } {
  const { method } = setUp;
  const missing: string[] = [];
  if (method.spring === 'not-said') missing.push('which spring is on the valve');
  if (method.lifter === 'not-said') missing.push('which lifter is under the pushrod');
  if (method.lash === 'not-said') missing.push('whether the lash was taken up');
  const lobeLift = lobeInput(spec, setUp, readings);
  if (typeof lobeLift === 'string') missing.push(lobeLift);
  const valve = kindOf(readings, 'valve-lift').map((reading) => siOf(reading.peak));
  if (valve.length === 0) missing.push('a pass of the valve lift');
  if (missing.length > 0 || typeof lobeLift === 'string' || method.spring === 'not-said') {
    return { input: undefined, missing };
  }
  const input: RatioInput = {
    valveLift: { readings: valve, graduation: siOf(method.graduation), errorLimit: siOf(method.errorLimit) },
    lobeLift,
    sameIndicator: method.lobeSource === 'indicator',
    spring: method.spring,
    nominals: nominalsFor(spec),
  };
  return { input, missing: [] };
}

/** The ratio, or why these readings give none: the record of a call is shown whatever was entered. */
function computed(input: RatioInput | undefined): { result: RatioResult | undefined; refused: string[] } {
  if (input === undefined) return { result: undefined, refused: [] };
  try {
    return { result: ratioAtFullLift.compute(input), refused: [] };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const refused = error.faults.map(
      (fault) => `${fault.pointer.slice(1).replaceAll('/', ' ')} ${fault.detail}`,
    );
    return { result: undefined, refused };
  }
}

/** A mean of falling passes is no ratio, whatever its interval (common practice, no published source). */
const SINKING = 'passes that don’t sink: a solid lifter, or one locked solid at the same seat height';

const borrowedText = ({ from }: LobeReadings): string[] =>
  from === undefined
    ? []
    : [
        `the lobe was read in set-up ${from.number}; at the lifter’s body it serves both springs and any lash`,
      ];

/** The ratio of a set-up with everything it rests on, from the readings that stand. */
export async function setUpRatio(
  tx: Tx,
  caller: Caller,
  buildId: string,
  setUpId: string,
): Promise<SetUpRatio> {
  const setUp = await getSetUp(tx, caller, buildId, setUpId);
  const spec = await specAt(tx, caller.shopId, buildId, setUp.revision);
  const all = await listReadings(tx, caller, buildId);
  const setUps = await listSetUps(tx, caller, buildId);
  const readings = all.filter((reading) => reading.setUpId === setUpId);
  const standing = stillStanding(all);
  const lobe = lobeReadings(setUp, setUps, standing);
  const valve = kindOf(stillStanding(readings), 'valve-lift');
  const { input, missing } = ratioInput(spec, setUp, [...lobe.readings, ...valve]);
  const questions = questionsFor(questionInput(spec, setUp, setUps, standing));
  const sinks = questions.some(({ code, weight }) => code === 'falling-passes' && weight === 'strong');
  const { result, refused } = sinks ? { result: undefined, refused: [SINKING] } : computed(input);
  return {
    setUp,
    spec,
    readings,
    lobe,
    rests: [...lobe.readings, ...valve].sort((a, b) => a.seq - b.seq),
    input,
    result,
    missing: [...missing, ...refused],
    questions,
    assumptions:
      input === undefined || result === undefined
        ? []
        : [...ratioAtFullLift.assumptions(input, result), ...borrowedText(lobe)],
    cautions: input === undefined || result === undefined ? [] : ratioAtFullLift.cautions(input, result),
  };
}

const questionView = z.object({
  code: z.string(),
  weight: z.enum(['strong', 'weak']),
  ask: z.string(),
  size: z.string(),
  test: z.string(),
  restsOn: z.array(z.string()),
});

/** The ratio as JSON has it; `quantity` names which of the two ratios it is. */
export const ratioView = z
  .object({
    setUpId: z.uuid(),
    revision: z.int(),
    quantity: z.enum(['light-spring ratio', 'running-spring ratio', 'not known']),
    result: ratioAtFullLift.output.optional(),
    missing: z.array(z.string()),
    questions: z.array(questionView),
    assumptions: z.array(z.string()),
    cautions: z.array(z.string()),
    restsOn: z.array(z.object({ readingId: z.uuid(), kind: z.string(), pass: z.int(), readAs: z.string() })),
  })
  .meta({ id: 'Ratio' });

const encode = encoderFor(ratioAtFullLift.output);
export const inInches = (si: number, unit: Unit = 'in'): number => si / UNITS[unit].toSi;

const QUANTITY = {
  light: 'light-spring ratio',
  running: 'running-spring ratio',
  'not-said': 'not known',
} as const;

export async function ratioOfSetUp(tx: Tx, caller: Caller, buildId: string, setUpId: string) {
  const found = await setUpRatio(tx, caller, buildId, setUpId);
  return {
    setUpId,
    revision: found.setUp.revision,
    quantity: QUANTITY[found.setUp.method.spring],
    ...(found.result === undefined ? {} : { result: encode(found.result, 'inch') }),
    missing: found.missing,
    questions: found.questions,
    assumptions: found.assumptions,
    cautions: found.cautions,
    restsOn: found.rests.map((reading) => ({
      readingId: reading.id,
      kind: reading.kind,
      pass: reading.pass,
      readAs: reading.peak.readAs,
    })),
  };
}
