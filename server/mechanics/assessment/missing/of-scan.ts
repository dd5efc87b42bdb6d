import { SIDES } from '../../../../shared/sides.ts';
import { ended } from '../common/first-said.ts';
import { byId, upperFirst } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import { needsOfScan } from '../scans/needs.ts';
import { questionsOfScan } from '../scans/questions.ts';
import { scanned } from '../scans/scanned.ts';
import { type Need, need, TURN } from './need.ts';

/** Where piston and valve come closest on either side (common practice, no published source). */
const USUAL: Readonly<Record<Side, string>> = {
  intake: 'from 2° to 20° after TDC',
  exhaust: 'from 20° to 2° before TDC',
};

/** A scan of either side that has a least: until there is one it is asked for, with what those there still need. */
export function ofScan(evidence: Evidence): Need[] {
  const standing = (evidence.scans ?? []).filter((scan) => scan.standing).toSorted(byId);
  return SIDES.map((side) => {
    const own = standing.filter(({ valve }) => valve === side).map(scanned);
    const needs = own.map((each) => needsOfScan(each, questionsOfScan(each, evidence)));
    const have = needs.some((each) => each.length === 0);
    const [first] = have ? [] : (needs[0] ?? []);
    return need(
      `scan-${side}`,
      first === undefined
        ? `piston to valve of an ${side}, over the crank`
        : `piston to valve of an ${side}: ${first.said}`,
      first === undefined
        ? `Read piston to valve of an ${side} every 2° ${USUAL[side]}, solid lifter, light spring, zero lash.`
        : `${upperFirst(side)}: ${ended(first.said)}`,
      have,
      { ...(first?.turns === false ? {} : TURN), begun: first !== undefined },
    );
  });
}
