import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import { checkAssumptions } from './check-assumptions.ts';
import { checkNumber } from './check-number.ts';
import { checkReading } from './check-reading.ts';
import { HIGHEST_RATIO, MOST_NAMES, MOST_READINGS } from './limits.ts';
import type { ExplainInput } from './types.ts';

const LONGEST = 100;

function checkCounts(input: ExplainInput, faults: InputFault[]): void {
  if (input.nominals.length === 0) {
    faults.push({ pointer: '/nominals', code: 'required', detail: 'At least one nominal ratio is needed.' });
  }
  const counts = [
    ['/nominals', input.nominals.length, MOST_NAMES],
    ['/readings', input.readings.length, MOST_READINGS],
  ] as const;
  for (const [pointer, count, most] of counts) {
    if (count <= most) continue;
    faults.push({ pointer, code: 'too-many', detail: `At most ${most} are allowed.`, received: count });
  }
}

function checkNames(input: ExplainInput, faults: InputFault[]): void {
  input.nominals.forEach((ratio, i) => {
    const pointer = `/nominals/${i}`;
    checkNumber(faults, pointer, ratio, { above: 0, upTo: HIGHEST_RATIO, of: 'A nominal ratio' });
    if (input.nominals.indexOf(ratio) < i) {
      faults.push({
        pointer,
        code: 'not-allowed',
        detail: 'This ratio is in the list already.',
        received: ratio,
      });
    }
  });
  if (input.mark !== undefined) {
    checkNumber(faults, '/mark', input.mark, { above: 0, upTo: HIGHEST_RATIO, of: 'A mark' });
  }
}

function checkLengths(input: ExplainInput, faults: InputFault[]): void {
  const lobe = { above: 0, upTo: LONGEST, of: 'A lobe lift' } as const;
  if (input.cardLobeLift !== undefined) checkNumber(faults, '/cardLobeLift', input.cardLobeLift, lobe);
  if (input.otherLobeLift !== undefined) checkNumber(faults, '/otherLobeLift', input.otherLobeLift, lobe);
  if (input.lashSetting !== undefined) {
    checkNumber(faults, '/lashSetting', input.lashSetting, { from: 0, upTo: 1, of: 'A lash setting' });
  }
}

/** Throws InputFaults with every fault found; each names its field, what came and what is allowed. */
export function checkInput(input: ExplainInput): void {
  const faults: InputFault[] = [];
  checkCounts(input, faults);
  checkNames(input, faults);
  checkLengths(input, faults);
  input.readings.forEach((reading, i) => {
    checkReading(faults, `/readings/${i}`, reading);
  });
  checkAssumptions(faults, input.assumptions ?? {});
  if (faults.length > 0) throw new InputFaults(faults);
}
