import { allowance } from '../../../kit/allowances.ts';
import type { Headline } from '../../assessment.ts';
import { inches, placeOf, valveSubject } from '../../common/said.ts';
import type { GroupExplained } from '../compared/explain.ts';
import { restingOn } from '../compared/lacking.ts';

/** Both lifts and the setting are off by as much as passes repeat. */
const FITS = (): number => 2 * allowance('repeat');

/** Read with the lash in it and again without: why the lift was short is told, and not only what it is now. */
export const lashHeadlines = (explained: readonly GroupExplained[]): Headline[] =>
  explained.flatMap((each) => {
    const resting = restingOn(each);
    const now = resting?.read.lift;
    if (resting === undefined || resting.lacks.length > 0 || now?.lash !== 'out') return [];
    const before = each.known.findLast(({ read: { setUp, lift } }) => {
      const { lash, lashSetting, spring } = setUp;
      if (lash !== 'set' || lashSetting === undefined || spring !== 'light' || lift === undefined)
        return false;
      return Math.abs(now.read - lift.read - lashSetting) <= FITS();
    });
    const setting = before?.read.setUp.lashSetting;
    if (setting === undefined) return [];
    const { cylinder, valve } = each.group;
    return [
      {
        id: `headline:lash-was-in:${each.group.key}`,
        about: valveSubject({ cylinder, valve }),
        step: 'ratio',
        sentence: `${placeOf(each.group)}: the lift was short by the ${inches(setting)} of lash that was left in; at zero lash it reads ${inches(now.read)}.`,
      },
    ];
  });
