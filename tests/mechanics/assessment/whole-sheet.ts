import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type {
  AnswerEvidence,
  ArmEvidence,
  Evidence,
  PassEvidence,
  SetUpEvidence,
  SheetEvidence,
  Side,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read, SET_UP } from './plain-build.ts';

/** An invented eight: card .350 and .345, all sold as 1.6, two banks; a call about one valve. */
export const EIGHT: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  engine: { cylinders: 8, mounting: 'stud', lifter: 'solid-flat', bankOrder: '1-3-5-7, 2-4-6-8' },
  card: {
    assumedRatio: 1.6,
    intake: { lobeLift: 0.35 * IN, lash: 0.016 * IN },
    exhaust: { lobeLift: 0.345 * IN, lash: 0.016 * IN },
  },
  springs: {},
};
export const VERIFY: Evidence = { ...EIGHT, call: { ...EIGHT.call, goal: 'verify-ratio' } };

/** Scatter of sixteen lobes and lifts as careful passes have it, thousandths. */
const LOBES = [0, 0.5, -0.5, 1, 0, -1, 0.5, 0, 0, 0.5, -1, 1, 0.5, 0, -0.5, 0];
const LIFTS = [0.5, -1, 1, 0, -0.5, 0.5, 0, 1, -1, 0, 0.5, -0.5, 1, 0, 0.5, -1];
const VALVES = [1, 2, 3, 4, 5, 6, 7, 8].flatMap((cylinder) => [
  { cylinder, valve: 'intake' as const },
  { cylinder, valve: 'exhaust' as const },
]);

interface RowRead {
  readonly lobe: number;
  readonly lift: number;
}

/** Sixteen rows whose arms give `ratio`; `other` makes some of them otherwise. */
export function sixteen(
  ratio: number | ((valve: Side) => number),
  other: (row: RowRead, place: string) => Partial<RowRead> = () => ({}),
  more: Partial<SheetEvidence> = {},
): SheetEvidence[] {
  return VALVES.flatMap(({ cylinder, valve }, at) => {
    const lobe = (valve === 'intake' ? 0.35 : 0.345) + (LOBES[at] ?? 0) / 1000;
    const by = typeof ratio === 'number' ? ratio : ratio(valve);
    const plain = { lobe, lift: lobe * by + (LIFTS[at] ?? 0) / 1000 };
    const row = { ...plain, ...other(plain, `${cylinder} ${valve}`) };
    return [
      read(cylinder, valve, 'lobe-lift', row.lobe, more),
      read(cylinder, valve, 'valve-lift', row.lift, more),
    ];
  });
}

export const armOf = (name: string, more: Partial<ArmEvidence> = {}): ArmEvidence => ({
  id: `arm-${name}`,
  name,
  ratioStamp: '1.6',
  otherNumber: '',
  boxLabel: '',
  ...more,
});

let setUps = 0;

/** A set-up on an intake valve with its passes, inches; lobes of .350. */
export function setUpOn(
  cylinder: number,
  armId: string | undefined,
  lifts: readonly number[],
  { counted = true, ...more }: Partial<SetUpEvidence> & { readonly counted?: boolean } = {},
): Pick<Evidence, 'setUps' | 'passes'> {
  setUps += 1;
  const id = `set-up-${setUps}`;
  const setUp: SetUpEvidence = {
    ...SET_UP,
    id,
    number: setUps,
    cylinder,
    ...(armId === undefined ? {} : { armId }),
    lobeSource: 'indicator',
    ...more,
  };
  const passes = (kind: PassEvidence['kind'], values: readonly number[]): PassEvidence[] =>
    values.map((value, index) => ({
      id: `${id}-${kind}-${index + 1}`,
      line: index + 1,
      standing: true,
      setUpId: id,
      kind,
      pass: index + 1,
      value: value * IN,
      zeroReturn: 0,
      counted,
      readAs: `${value} in`,
    }));
  return {
    setUps: [setUp],
    passes: [...passes('lobe-lift', [0.35, 0.35, 0.351]), ...passes('valve-lift', lifts)],
  };
}

export const together = (
  ...all: readonly Pick<Evidence, 'setUps' | 'passes'>[]
): Pick<Evidence, 'setUps' | 'passes'> => ({
  setUps: all.flatMap((each) => each.setUps),
  passes: all.flatMap((each) => each.passes),
});

export interface Heard {
  readonly headlines: readonly string[];
  readonly next: string | undefined;
  readonly sentence: string;
  readonly asks: readonly string[];
  readonly stop: readonly string[];
  readonly all: Assessment;
}

export function heard(evidence: Evidence): Heard {
  const all = assess(evidence);
  return {
    headlines: all.headlines.map(({ sentence }) => sentence),
    next: all.next?.action,
    sentence: all.next?.sentence ?? '',
    asks: all.questions.map(({ code }) => code),
    stop: all.stop.map(({ sentence }) => sentence),
    all,
  };
}

/** The build once this was answered to the question of that word as it is asked now. */
export function answered(evidence: Evidence, code: string, answer: string, line = 9_999): Evidence {
  const question = heard(evidence).all.questions.find((each) => each.code === code);
  if (question === undefined) throw new Error(`${code} is not asked`);
  const given: AnswerEvidence = {
    id: `answer-${code}-${line}`,
    line,
    questionId: question.id,
    code,
    question: question.ask,
    answer,
  };
  return { ...evidence, answers: [...evidence.answers, given] };
}
