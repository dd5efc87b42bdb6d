import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { NextAction } from '../assessment.ts';
import { listed, nominalSaid, upperFirst } from '../common/said.ts';
import type { GapName } from '../evidence.ts';
import type { ChangeDetail } from './detail.ts';
import { once, placesSaid } from './groups.ts';
import { notMeasuredYet } from './not-known.ts';

/** How each is read by hand, with the arms that are to run (common practice, no published source). */
const HOW: Readonly<Record<GapName, string>> = {
  'piston-to-valve':
    'clay on the piston, two turns by hand, and the thinnest place of it; or a plunger on the retainer every 2°, solid lifter, light spring, zero lash',
  'coil-bind':
    'at full lift on the springs that run, wires between the coils: the thickest that still goes in',
  'retainer-to-seal':
    'at full lift on a light spring, solid lifter, zero lash, a wire or feeler between retainer and seal',
  'pushrod-to-head':
    'a wire or feeler beside the pushrod, with the valve shut and at full lift; the smaller of the two',
  'slot-to-stud':
    'a bent wire at each end of the slot, with the valve shut and at full lift; the wire that goes in, and the next that does not',
  'rocker-to-retainer':
    'a wire or feeler between rocker and retainer, from shut to full lift; the least of it',
  cover:
    'clay on rockers and adjusters, the cover on with its gasket, two turns by hand; the thinnest place of it',
};

/** Gaps that nothing is known of, once what was worked out is told: the worst first, with how it is read. */
export function nextToMeasure(details: readonly ChangeDetail[]): NextAction | undefined {
  const all = notMeasuredYet(details);
  const [worst] = all;
  if (worst === undefined) return undefined;
  const { name } = worst.gap;
  const here = all.filter(({ gap }) => gap.name === name);
  const others = once(all.map(({ gap }) => gap.name)).filter((each) => each !== name);
  const titleOf = (each: GapName): string => SHEET_KINDS[each].toLowerCase();
  const plans = once(here.flatMap(({ detail: { plan } }) => plan ?? []));
  const planned = plans.length === 0 ? '' : ` with the planned ${listed(plans.map(nominalSaid))}`;
  const then = others.length === 0 ? '' : ` Then: ${listed(others.map(titleOf))}.`;
  const it = upperFirst(HOW[name]);
  return {
    id: `next:consequences:measure:${name}`,
    action: `measure:${name}`,
    step: 'sheet',
    about: { of: 'build' },
    sentence: `Measure ${titleOf(name)} on ${placesSaid(here)}${planned}. ${it}.${then}`,
    reason: here.every(({ gap }) => gap.measure)
      ? 'Nobody measured it, and no figure of the engine gives it.'
      : 'Nothing is known of it yet.',
    turns: true,
  };
}
