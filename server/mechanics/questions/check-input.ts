import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import type { Tolerances } from './tolerances.ts';
import type { QuestionInput } from './types.ts';

interface Named {
  readonly pointer: string;
  readonly value: number | undefined;
  readonly sign: 'positive' | 'not-negative' | 'any';
}

const POSITIVE = [
  'statedValveLift',
  'statedLobeLift',
  'perTurn',
  'graduation',
  'travel',
  'cardLobeLift',
  'otherCardLobeLift',
  'cardValveLift',
  'cardRatio',
  'nominalRatio',
  'lightRatio',
  'runningRatio',
] as const;
const NOT_NEGATIVE = ['lean', 'lashSetting', 'pushedIn', 'cardLash'] as const;

function numbersOf(input: QuestionInput): Named[] {
  return [
    ...POSITIVE.map((name) => ({ pointer: `/${name}`, value: input[name], sign: 'positive' as const })),
    ...NOT_NEGATIVE.map((name) => ({
      pointer: `/${name}`,
      value: input[name],
      sign: 'not-negative' as const,
    })),
    ...(['valvePasses', 'lobePasses'] as const).flatMap((list) =>
      input[list].flatMap((pass, i): Named[] => [
        { pointer: `/${list}/${i}/lift`, value: pass.lift, sign: 'positive' },
        { pointer: `/${list}/${i}/zeroReturn`, value: pass.zeroReturn, sign: 'any' },
      ]),
    ),
    ...(input.otherLashes ?? []).map((value, i) => ({
      pointer: `/otherLashes/${i}`,
      value,
      sign: 'not-negative' as const,
    })),
    ...(input.otherPeaks ?? []).map((value, i) => ({
      pointer: `/otherPeaks/${i}`,
      value,
      sign: 'positive' as const,
    })),
  ];
}

const ALLOWED = { positive: 'above 0', 'not-negative': 'at least 0', any: 'finite' };

function isAllowed(value: number, sign: Named['sign']): boolean {
  return sign === 'any' || (sign === 'positive' ? value > 0 : value >= 0);
}

/** Throws with every number that can't be asked about: the field, what came, what is allowed. */
export function checkInput(input: QuestionInput, tolerances: Tolerances): void {
  const limits = Object.entries(tolerances).map(
    ([name, value]): Named => ({ pointer: `/tolerances/${name}`, value, sign: 'not-negative' }),
  );
  const faults = [...numbersOf(input), ...limits].flatMap(({ pointer, value, sign }): InputFault[] => {
    if (value === undefined || (Number.isFinite(value) && isAllowed(value, sign))) return [];
    const detail = `must be a number ${ALLOWED[sign]}, not ${value}.`;
    return [
      {
        pointer,
        code: Number.isFinite(value) ? 'out-of-range' : 'not-a-number',
        detail,
        received: value,
      },
    ];
  });
  if (faults.length > 0) throw new InputFaults(faults);
}
