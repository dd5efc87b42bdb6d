import { coilsTouch, makerFirst, springCaution } from './caution.ts';
import { coilsMeet } from './spring-heights.ts';

interface Given {
  readonly springs: readonly { readonly installedHeight?: number | undefined }[];
  readonly loadTolerance?: number | undefined;
  readonly limit?: number | undefined;
  readonly uncertainty?: number | undefined;
}

interface Result {
  readonly loads: readonly { readonly seatLoad: number }[];
  readonly margin: number;
}

/** What a nest assumes, the inputs left out among it. */
export function nestAssumptions(given: Given): string[] {
  return [
    given.springs.some(({ installedHeight }) => installedHeight !== undefined)
      ? 'all springs stand under one retainer; where a step sets one apart its own installed height counts'
      : 'all springs stand on one seat under one retainer: a step between them is not counted',
    'no friction between the coils, no damper',
    ...(given.limit === undefined
      ? ['the default limit for coil bind, common practice, no published source']
      : []),
    ...(given.loadTolerance === undefined
      ? []
      : [
          'each load is anywhere within its tolerance alike, the springs independently of one another; the interval goes no further than the tolerances together allow',
        ]),
    ...(given.uncertainty === undefined ? ['heights and lift taken as exact'] : []),
  ];
}

function looseSprings({ loads }: Result): readonly string[] {
  const loose = loads.flatMap(({ seatLoad }, index) => (seatLoad > 0 ? [] : [index + 1]));
  if (loose.length === 0) return [];
  return [
    `Spring ${loose.join(', ')} of the list stands loose with the valve on its seat and carries nothing there: it can rattle and turn.`,
  ];
}

/** What a nest must warn of. */
export function nestCautions(result: Result): string[] {
  return [
    ...looseSprings(result),
    ...(coilsMeet(result.margin) ? [coilsTouch] : []),
    springCaution,
    makerFirst,
  ];
}
