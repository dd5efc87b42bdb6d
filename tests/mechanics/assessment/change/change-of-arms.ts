import type { ValveRatio } from '../../../../server/mechanics/assessment/change/input.ts';
import type {
  ArmEvidence,
  Evidence,
  SheetEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import type { ValveName } from '../../../../shared/schemas/words.ts';
import { PLAIN, read } from '../plain-build.ts';

/*
 * An invented engine: lobes .350 in, 1.480 in from pivot to tip, sold as 1.5, 1.6 planned; the lobe stands at .120 in where
 * valve and piston come closest. The card assumes 1.6, which says nothing of the arms that are on it.
 */

export const arm = (id: string, ratioStamp: string): ArmEvidence => ({
  id,
  name: id,
  ratioStamp,
  otherNumber: '',
  boxLabel: '',
});

const lobe = { lobeLift: 0.35 * IN, lash: 0.016 * IN };

export const CHANGE: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.6, intake: lobe, exhaust: lobe },
  springs: {},
  rockers: { soldAs: 1.5, planned: 1.6, pivotToTip: 1.48 * IN },
  taken: { intake: { lobeLiftAtClosest: 0.12 * IN }, exhaust: { lobeLiftAtClosest: 0.12 * IN } },
  arms: [arm('old', '1.5'), arm('new', '1.6')],
};

/** A gap of the sheet under its own id. */
export const gapOf = (
  id: string,
  kind: 'piston-to-valve' | 'pushrod-to-head' | 'coil-bind',
  inches: number,
  more: Partial<SheetEvidence> = {},
  valve: ValveName = 'intake',
): SheetEvidence => ({ ...read(1, valve, kind, inches, more), id });

/** A ratio as it was read on cylinder 1 with an arm. */
export const readOf = (armId: string, value: number, valve: ValveName = 'intake'): ValveRatio => ({
  cylinder: 1,
  valve,
  setUpId: `with-${armId}`,
  armId,
  value,
  low: value,
  high: value,
  spring: 'light',
  basis: 'measured',
  lashIn: 'none',
  lobeLift: 0.35 * IN,
  lacks: [],
  restsOn: [`pass-${armId}`],
});

/** The answer that a gap was read at zero lash, or with its lash in. */
export const lashAnswered = (entryId: string, valve: ValveName, answer: 'zero' | 'set') => ({
  id: `lash-${entryId}`,
  line: 90,
  questionId: `question:gap-lash-not-said:1-${valve}:${entryId}:gaplashnotsaid`,
  code: 'gap-lash-not-said',
  question: 'gap-lash-not-said',
  answer,
});
