import { turningCaution } from '../cam/caution.ts';

interface Given {
  readonly readingUncertainty: number;
  readonly secondPass?: object | undefined;
}

interface Found {
  readonly ratio: { readonly value: number };
  readonly residuals: readonly number[];
  readonly compliance?: object | undefined;
}

/** What a fit through the lift assumes. */
export function throughLiftAssumptions({ secondPass }: Given): string[] {
  return [
    'one ratio through the whole lift: a ratio that changes with lift shows in the residuals, not in the fit',
    'the first pass is on a light spring that bends nothing',
    'each lift read with the same uncertainty, independently of the others',
    ...(secondPass === undefined
      ? ['no second pass: what the running spring bends away is not known']
      : ['lash, zero and set-up are the same in both passes']),
  ];
}

/** What a fit through the lift must warn of. */
export function throughLiftCautions(given: Given, found: Found): string[] {
  const deviation = given.readingUncertainty * Math.hypot(1, found.ratio.value);
  const largest = found.residuals.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  return [
    ...(deviation > 0 && largest > 3 * deviation
      ? ['One station is off the line by more than three times what its readings allow: read it again.']
      : []),
    'An indicator’s own zero error stands in the lash left in: .003 in of it can come from there.',
    ...(given.secondPass !== undefined && found.compliance === undefined
      ? ['The running spring’s load is zero throughout: what the train bends can’t be told.']
      : []),
    turningCaution,
  ];
}
