import type { z } from 'zod';
import { readNumber } from '../../shared/quantities/read-number.ts';
import { inches } from '../../shared/schemas/entered.ts';
import type { Caller } from '../access/caller.ts';
import { type Answer, listAnswers } from '../answers/answers.ts';
import { type Arm, listArms, specAt } from '../builds/builds.ts';
import { encoderFor } from '../compute/encode.ts';
import type { Tx } from '../database/database.ts';
import { computation as explainReadings } from '../mechanics/computations/explain-readings.ts';
import type { explainInput } from '../mechanics/explain-readings/json-input.ts';
import { IN } from '../mechanics/kit/si.ts';
import { getSetUp, listSetUps, type SetUp } from '../set-ups/set-ups.ts';
import { nominalsFor } from './ratio.ts';
import { listReadings, type Reading, standing } from './readings.ts';

type ExplainInput = z.output<typeof explainInput>;
type ExplainReading = ExplainInput['readings'][number];
export type Explained = ReturnType<typeof explainReadings.compute>;

/** A stamp counts as a ratio only with its point: "16" or "60" alone stays undecided. */
function ratioOfStamp(arm: Arm | undefined): number | undefined {
  const stamp = arm?.ratioStamp.trim() ?? '';
  if (!/^\d[.,]\d{1,3}$/.test(stamp)) return undefined;
  const read = readNumber(stamp, { kind: 'ratio' });
  return read.ok && read.value > 0.9 && read.value < 2.5 ? read.value : undefined;
}

const ABOUT_TURNS = new Set(['turn-miscounted', 'hand-read-backwards', 'turn-too-few', 'turn-too-many']);

/** A program answers a question by its code, a page by the words that were asked. */
const isAboutTurns = (question: string) =>
  ABOUT_TURNS.has(question) || /\bturns? of the dial\b|\bthe wrong way round\b/i.test(question);

/** What was put right for a reading, against the state of the first set-up. */
function putRight(setUp: SetUp, first: SetUp, answers: readonly Answer[]) {
  const { lash, alignment } = setUp.method;
  return {
    ...(lash === 'zero' && first.method.lash !== 'zero' ? { lashSet: true } : {}),
    ...(alignment === 'parallel' && first.method.alignment !== 'parallel' ? { aligned: true } : {}),
    ...(answers.some((each) => each.setUpId === setUp.id && isAboutTurns(each.question))
      ? { counted: true }
      : {}),
  };
}

function toExplainReading(
  reading: Reading,
  of: 'valve-lift' | 'lobe-lift',
  at: {
    readonly setUp: SetUp;
    readonly first: SetUp;
    readonly index: number;
    readonly elsewhere: boolean;
    readonly pass: number;
  },
  answers: readonly Answer[],
): ExplainReading {
  const { method } = at.setUp;
  return {
    of,
    value: inches(reading.peak) * IN,
    pass: at.pass,
    setUp: at.index,
    ...(method.spring === 'not-said' ? {} : { spring: method.spring }),
    ...(method.lifter === 'not-said'
      ? {}
      : { lifter: method.lifter === 'hydraulic' ? ('hydraulic' as const) : ('solid' as const) }),
    // The turns of the dial are doubted at the valve alone.
    ...(of === 'valve-lift' ? { perTurn: inches(method.perTurn) * IN } : {}),
    ...putRight(at.setUp, at.first, answers),
    ...(at.elsewhere ? { otherValve: true } : {}),
    ...(of === 'lobe-lift' && method.lobeSource === 'caliper' ? { method: 'caliper' as const } : {}),
  };
}

/** Set-ups that speak of the same arm: those of this valve, and those of the same arm on another valve. */
function relevant(setUp: SetUp, all: readonly SetUp[]): SetUp[] {
  return all.filter(
    (each) =>
      (each.cylinder === setUp.cylinder && each.valve === setUp.valve) ||
      (setUp.armId !== undefined && each.armId === setUp.armId),
  );
}

/** The inference's input out of the stored readings that stand; undefined until a valve lift was read. */
export async function explanationInput(
  tx: Tx,
  caller: Caller,
  buildId: string,
  setUpId: string,
): Promise<ExplainInput | undefined> {
  const setUp = await getSetUp(tx, caller, buildId, setUpId);
  const spec = await specAt(tx, caller.shopId, buildId, setUp.revision);
  const setUps = relevant(setUp, await listSetUps(tx, caller, buildId));
  const first = setUps[0] ?? setUp;
  const answers = await listAnswers(tx, caller, buildId);
  const arms = await listArms(tx, caller, buildId);
  const passes = new Map<string, number>();
  const readings = standing(await listReadings(tx, caller, buildId)).flatMap((reading) => {
    const index = setUps.findIndex((each) => each.id === reading.setUpId);
    const own = setUps[index];
    const of =
      reading.kind === 'valve-lift' ? 'valve-lift' : reading.kind === 'lobe-lift' ? 'lobe-lift' : undefined;
    if (own === undefined || of === undefined) return [];
    const pass = (passes.get(of) ?? 0) + 1;
    passes.set(of, pass);
    const elsewhere = own.cylinder !== setUp.cylinder || own.valve !== setUp.valve;
    return [toExplainReading(reading, of, { setUp: own, first, index, elsewhere, pass }, answers)];
  });
  if (!readings.some((each) => each.of === 'valve-lift')) return undefined;
  const mark = ratioOfStamp(arms.find((arm) => arm.id === setUp.armId));
  const card = spec.cam?.[setUp.valve]?.lobeLift;
  const other = spec.cam?.[setUp.valve === 'intake' ? 'exhaust' : 'intake']?.lobeLift;
  const setting = first.method.lashSetting ?? spec.cam?.[setUp.valve]?.lash;
  return {
    nominals: nominalsFor(spec),
    // The inference takes forty; the latest speak of the engine as it is.
    readings: readings.slice(-40),
    ...(mark === undefined ? {} : { mark }),
    ...(card === undefined ? {} : { cardLobeLift: inches(card) * IN }),
    ...(other === undefined ? {} : { otherLobeLift: inches(other) * IN }),
    ...(first.method.lash === 'not-said' ? {} : { lash: first.method.lash }),
    ...(setting === undefined || first.method.lash !== 'set' || inches(setting) <= 0
      ? {}
      : { lashSetting: inches(setting) * IN }),
    ...(first.method.alignment === 'not-said' ? {} : { alignment: first.method.alignment }),
  };
}

/** What would explain the readings of a set-up's valve, and the next reading worth taking. */
export async function explainSetUp(
  tx: Tx,
  caller: Caller,
  buildId: string,
  setUpId: string,
): Promise<Explained | undefined> {
  const input = await explanationInput(tx, caller, buildId, setUpId);
  return input === undefined ? undefined : explainReadings.compute(input);
}

export const explanationView = explainReadings.output;
const encode = encoderFor(explanationView);
export const showExplanation = (explained: Explained): unknown => encode(explained, 'inch');
