import type { AssessedQuantity } from '../assessment.ts';
import { BUILD } from '../common/kept.ts';
import type { SetEvidence } from '../evidence/kept-sums.ts';
import { preloadWithin } from './said.ts';

const TURN = 2 * Math.PI;

/** What a page has a column for: its name and its value. */
function figureOf(set: SetEvidence): Pick<AssessedQuantity, 'name' | 'dimension' | 'value'> {
  switch (set.of) {
    case 'preload':
      return { name: 'Preload of the lifter', dimension: 'length', value: set.preload };
    case 'turns':
      return { name: 'Turn of the adjuster, tightening', dimension: 'angle', value: set.turns * TURN };
    case 'pushrod':
      return { name: 'Pushrod length', dimension: 'length', value: set.length };
    case 'stand':
      return { name: 'Stand to be raised', dimension: 'length', value: set.shim };
    case 'heat':
      return { name: 'Lash on the cold engine', dimension: 'length', value: set.cold };
    case 'follower':
      return { name: 'Follower’s ratio by its arms, valve shut', dimension: 'ratio', value: set.shut.ratio };
  }
}

/** @param doubted nobody has said that its figures are right */
export const ofSet = (set: SetEvidence, doubted: boolean): AssessedQuantity => ({
  id: `working:${set.of}`,
  ...figureOf(set),
  ...(set.of === 'preload'
    ? { low: set.preload - preloadWithin(set), high: set.preload + preloadWithin(set) }
    : {}),
  ...(set.of === 'follower' ? { low: set.shut.low, high: set.shut.high } : {}),
  about: BUILD,
  basis: 'calculated',
  conditions:
    set.of === 'preload' || set.of === 'turns' ? [`thread ${set.thread}`, `ratio ${set.ratio}`] : [],
  lacks: doubted ? ['whether its figures are right'] : [],
  restsOn: [],
});
