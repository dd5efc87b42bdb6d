import { meaning, tidy } from './echo.ts';
import type { Meaning } from './number-types.ts';
import type { NumberValue } from './number-value.ts';

/** Digits said one after another, `eight forty-two`, with what they mean in each way of saying them. */
interface Run {
  /** As one whole number: 842. */
  readonly whole: number;
  /** As thousandths of an inch: the same number. */
  readonly thou: Meaning;
  /** As the digits after the point of an inch: .842. */
  readonly afterPoint: Meaning;
  /** First group before the point: twelve twenty-four → 12.24. */
  readonly split: number;
  readonly leadingZero: boolean;
  /** An inch and more, its one digit said first: `four thirty` as 4.30 in, and as 4.030 in. */
  readonly point: readonly Meaning[];
  /** `five ten thousandths` taken as five of them: five ten-thousandths of an inch. */
  readonly tenThousandths?: Meaning;
}

/** Two digits after the one are hundredths to some and thousandths to others. */
function pointAfterOne(number: NumberValue, whole: number): Meaning[] {
  const { groups = [], digits = '' } = number.run ?? {};
  const [head = ''] = groups;
  const after = digits.length - 1;
  if (head.length !== 1 || head === '0' || after < 1) return [];
  const inches = number.sign * Number(head);
  const value = tidy(whole / 10 ** after);
  const thousandths = after === 2 ? [tidy(inches + (whole - inches * 100) / 1000)] : [];
  return [value, ...thousandths].map((each, at) => meaning(each, 'in', { places: at === 0 ? after : 3 }));
}

export function asRun(number: NumberValue): Run | undefined {
  const run = number.run;
  if (run === undefined) return undefined;
  const whole = number.sign * (Number(run.digits) + run.part);
  const head = run.groups[0] ?? '';
  const known = {
    whole,
    thou: meaning(whole, 'thou'),
    afterPoint: meaning(tidy(whole / 10 ** run.digits.length), 'in', { places: run.digits.length }),
    split: tidy(whole / 10 ** (run.digits.length - head.length)),
    leadingZero: run.digits.startsWith('0'),
    point: pointAfterOne(number, whole),
  };
  if (run.groups.at(-1) !== '10') return known;
  const before = number.sign * Number(run.groups.slice(0, -1).join(''));
  return { ...known, tenThousandths: meaning(tidy(before / 10_000), 'in') };
}
