import { planOf } from '../../../../shared/schemas/goals.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { listed } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import { MUST_TURN, type Need, need } from './need.ts';

/** What another cam or ratio may use up, as it is read on the sheet. */
const GAPS = [
  { kind: 'coil-bind', what: 'room to coil bind' },
  { kind: 'retainer-to-seal', what: 'retainer to seal' },
  { kind: 'piston-to-valve', what: 'piston to valve' },
] as const;

/** A change of an overhead cam is not worked out: its gaps are measured on the engine, and nothing else is asked for. */
export const isMeasuredChange = ({ call, engine: { gear = 'pushrod' } }: Evidence): boolean =>
  gear !== 'pushrod' && planOf(call.goal).isChange === true;

const isRead = ({ sheet, scans = [] }: Evidence, of: string, side: Side): boolean =>
  sheet.some(({ standing, kind, valve }) => standing && kind === of && sideOfValve(valve) === side) ||
  (of === 'piston-to-valve' && scans.some(({ standing, valve }) => standing && sideOfValve(valve) === side));

/** The gaps of such a change, each of both sides. */
export const ofMeasuredChange = (evidence: Evidence): Need[] =>
  GAPS.map(({ kind, what }) => {
    const left = SIDES.filter((side) => !isRead(evidence, kind, side));
    const sides = listed((left.length === 0 ? SIDES : left).map((side) => `an ${side}`));
    return need(
      `measured-${kind}`,
      `${what} of ${sides}, measured with the cam that is to go in`,
      `Measure ${what} of ${sides} on this engine, with the cam that is to go in, and enter it on the sheet.`,
      left.length === 0,
      MUST_TURN,
    );
  });
