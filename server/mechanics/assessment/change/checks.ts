import { IN } from '../../kit/si.ts';
import { gapSaid } from '../common/gap-said.ts';
import { limitNamed } from '../common/limits.ts';
import { inches, listed, upperFirst } from '../common/said.ts';
import type { Evidence, GapName } from '../evidence.ts';
import type { ChangeCheck, ChangeDetail, ChangeFigure, ChangeGap } from './detail.ts';
import { withRatio } from './told.ts';

type Worked = Omit<ChangeDetail, 'checks' | 'cautions' | 'adjusters'>;

const figure = ({ figures }: Worked, name: ChangeFigure['name']) =>
  figures.find((each) => each.name === name);

/** Less than the last digit that is told is no move. */
const NONE = 0.0005 * IN;

/** How far the cup moves, and which way; or what that needs. */
function cupSaid(detail: Worked): string {
  const cup = figure(detail, 'cup-move');
  if (cup?.after === undefined)
    return `how far the pushrod’s cup moves is not known: it needs ${listed(cup?.lacks ?? [])}`;
  const { value, low, high } = cup.after;
  if (Math.abs(value) < NONE) return 'the pushrod’s cup stays where it is';
  return value > 0
    ? `the pushrod’s cup moves ${gapSaid({ value, low, high })} toward the stud`
    : `the pushrod’s cup moves ${gapSaid({ value: -value, low: -high, high: -low })} away from the stud`;
}

/** `rocker slot to stud (.036 to .040 in with the arms before)`; what is known with the other arms is told as a gap. */
function gapKnown({ title, before, after }: ChangeGap): string {
  const name = title.toLowerCase();
  if (after !== undefined) return name;
  return `${name} (${before === undefined ? 'not read' : `${gapSaid(before)} with the arms before`})`;
}

/** What the pushrod and the arm may meet once the ratio is another; each gap shut and at full lift. */
const MAY_MEET: readonly GapName[] = ['pushrod-to-head', 'slot-to-stud', 'rocker-to-retainer', 'cover'];

function cupCheck(detail: Worked): string {
  const gaps = MAY_MEET.flatMap((name) => detail.gaps.find((gap) => gap.name === name) ?? []);
  return `${cupSaid(detail)}. Look again, shut and at full lift: ${gaps.map(gapKnown).join(', ')}, and whether the pushrod is free in the guide plate.`;
}

function sweepCheck(detail: Worked): string[] {
  const sweep = figure(detail, 'least-sweep');
  if (sweep?.after === undefined) return [];
  const now = inches(sweep.after.value);
  const was = sweep.before === undefined ? now : inches(sweep.before);
  const goes = was === now ? `stays ${now}` : `goes from ${was} to ${now}`;
  return [`the least sweep ${goes}: look at the mark on the tip again, its width and its place.`];
}

/** Gaps that no figure of this build gives. */
export function notCalculated(evidence: Evidence): string {
  const side = limitNamed(evidence, 'piston-to-valve-radial');
  const valves = limitNamed(evidence, 'valve-to-valve');
  return `valve head to pocket sideways (${inches(side.value)} wanted: ${side.source}) and valve to valve (${inches(valves.value)} wanted: ${valves.source}) are not calculated: measure them in clay`;
}

/** What is looked at again with other arms, each with what is known of it. */
export function checksOf(detail: Worked): ChangeCheck[] {
  const said: readonly (readonly [string, string])[] = [
    ['cup', cupCheck(detail)],
    ...sweepCheck(detail).map((text) => ['sweep', text] as const),
  ];
  return said.map(([code, text]) => ({
    id: `check:${code}:${detail.key}`,
    sentence: `${upperFirst(withRatio(detail))}: ${text}`,
  }));
}
