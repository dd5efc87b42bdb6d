import { turningCaution } from '../cam/caution.ts';
import { IN } from '../kit/si.ts';
import { defaultTolerances } from '../questions/tolerances.ts';
import { byIndicator, type OneLift, type ReadLift } from './lift-fields.ts';
import { isSinking } from './passes.ts';

interface Given {
  readonly valveLift: ReadLift;
  readonly lobe: ReadLift | OneLift;
  readonly sameIndicator: boolean;
  readonly spring: 'light' | 'running';
  /** Lash may have been in the lift as it was read. */
  readonly lashIn?: boolean;
}

/** What one pass alone lacks, and what is taken in its place. */
function onScatter(lift: ReadLift | OneLift, at: string): string[] {
  if (!('readings' in lift)) return [];
  if (lift.readings.length > 1)
    return lift.usualScatter === undefined ? [] : [`scatter at the ${at} pooled with the usual one`];
  return [
    lift.usualScatter === undefined
      ? `one pass at the ${at}: its scatter is left out`
      : `one pass at the ${at}: it has the scatter that such passes usually have`,
  ];
}

const passesOf = (lobe: ReadLift | OneLift): readonly number[] => ('readings' in lobe ? lobe.readings : []);

function onIndicators({ lobe, sameIndicator }: Given): string {
  if (!sameIndicator) return 'the two lifts were read independently of each other';
  return byIndicator(lobe)
    ? 'the error limits of one indicator go together by half'
    : 'the lobe lift comes from a card or caliper: no error is shared with the indicator at the valve';
}

/** What a ratio at full lift assumes. */
export function fullLiftAssumptions(given: Given): string[] {
  return [
    'graduations and error limits: anywhere within them alike',
    onIndicators(given),
    `${given.lashIn === true ? '' : 'lash at zero, '}the plunger in line with the valve, the hand counted right`,
    ...onScatter(given.valveLift, 'valve'),
    ...onScatter(given.lobe, 'lobe'),
    ...('source' in given.lobe && given.lobe.source === 'card'
      ? ['the cam is ground as its card says, within the error limit']
      : []),
  ];
}

/** What a ratio at full lift must warn of. */
export function fullLiftCautions(given: Given): string[] {
  return [
    ...(given.spring === 'running'
      ? [
          'Read under the running spring: this is what is left after flex and can’t be set against a stamp; read it on a light spring for that.',
        ]
      : []),
    ...(isSinking(given.valveLift.readings, defaultTolerances.sinkPerPassDoubtful * IN)
      ? [
          'Each pass at the valve reads lower than the one before: the lifter is sinking, and a mean settles nothing.',
        ]
      : []),
    ...(isSinking(passesOf(given.lobe), defaultTolerances.sinkPerPass * IN)
      ? ['Each pass at the lobe reads lower than the one before: find out why before taking the mean.']
      : []),
    turningCaution,
  ];
}
