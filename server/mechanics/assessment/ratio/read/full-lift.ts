import { InputFaults } from '../../../../../shared/problems/faults.ts';
import { inSpoken } from '../../../../../shared/quantities/authored.ts';
import { computation as ratioAtFullLift } from '../../../computations/ratio-at-full-lift.ts';
import { DEFAULT_ASSUMPTIONS } from '../../../explain-readings/assumptions.ts';
import { isDial } from '../../../kit/lift-tools.ts';
import { IN } from '../../../kit/si.ts';
import { fullLiftAssumptions } from '../../../ratio-readings/full-lift-words.ts';
import { lobeForm } from '../../../ratio-readings/lift-fields.ts';
import { withoutStop } from '../../common/first-said.ts';
import { lowerFirst } from '../../common/said.ts';
import type { RatioInput, RatioResult } from './detail.ts';
import type { RatioLack } from './lack.ts';
import type { LobeInUse } from './lobe.ts';
import { meanOf, type UsedPasses } from './passes.ts';
import type { SetUpNow } from './set-ups.ts';
import { zeroLeft } from './zero.ts';

/** Scatter of single passes with nothing wrong, as the inference has it: common practice, no published source. */
const USUAL_SCATTER = DEFAULT_ASSUMPTIONS.readingSpread * IN;

/** How far a lash that was set may be from its setting, half-width: common practice, no published source. */
const SETTING_WITHIN = 0.002 * IN;

function lobeInput(setUp: SetUpNow, lobe: LobeInUse): RatioInput['lobeLift'] | undefined {
  const errorLimit = setUp.lobeErrorLimit;
  if (lobe.value === undefined) return undefined;
  if (lobe.source === 'card') return { value: lobe.value, errorLimit, source: 'card' };
  const { used } = lobe.passes;
  if (lobe.source === 'caliper') return { value: meanOf(used), errorLimit, source: 'caliper' };
  return {
    readings: used.map(({ value }) => value),
    graduation: setUp.graduation,
    errorLimit: errorLimit + zeroLeft(used),
    usualScatter: USUAL_SCATTER,
  };
}

/** The lash put back where it was left in and its setting is known: the ratio is of the gross lift. */
const putBack = ({ lash, lashSetting }: SetUpNow): number => (lash === 'set' ? (lashSetting ?? 0) : 0);

/** What the ratio at full lift is calculated from; undefined while a lift or the spring is not known. */
export function ratioInput(setUp: SetUpNow, valve: UsedPasses, lobe: LobeInUse): RatioInput | undefined {
  const lobeLift = lobeInput(setUp, lobe);
  if (setUp.spring === 'not-said' || lobeLift === undefined || valve.used.length === 0) return undefined;
  const added = putBack(setUp);
  return {
    valveLift: {
      readings: valve.used.map(({ value }) => value + added),
      graduation: setUp.graduation,
      errorLimit: setUp.errorLimit + zeroLeft(valve.used) + (added > 0 ? SETTING_WITHIN : 0),
      usualScatter: USUAL_SCATTER,
    },
    lobeLift,
    sameIndicator: lobe.source === 'indicator' && isDial(setUp.tool),
    spring: setUp.spring,
  };
}

/** Faults of an input in words: what came, and what is allowed; each once. */
export function faultsSaid(error: InputFaults): string[] {
  const said = error.faults.map(({ detail, received }) =>
    typeof received === 'number' ? `${received} came: ${lowerFirst(detail)}` : lowerFirst(detail),
  );
  return [...new Set(said)].map(withoutStop);
}

/** The ratio, or why these figures give none: the record of a call is shown whatever was entered. */
export function ratioResult(input: RatioInput | undefined): { result?: RatioResult; refused: RatioLack[] } {
  if (input === undefined) return { refused: [] };
  try {
    return { result: ratioAtFullLift.compute(input), refused: [] };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return { refused: [{ code: 'lifts-do-not-go-together', why: faultsSaid(error).join('; ') }] };
  }
}

export const assumptionsOf = (input: RatioInput, setUp: SetUpNow): string[] => [
  ...fullLiftAssumptions({
    ...input,
    lobe: lobeForm(input.lobeLift),
    lashIn: setUp.lash !== 'zero',
  }),
  ...(putBack(setUp) > 0
    ? [inSpoken('the lash that was left in is put back, as it was set, within .002 in')]
    : []),
];

export const cautionsOf = (input: RatioInput, result: RatioResult): readonly string[] =>
  ratioAtFullLift.cautions(input, result);
