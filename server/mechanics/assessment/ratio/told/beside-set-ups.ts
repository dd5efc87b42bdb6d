import { allowance } from '../../../kit/allowances.ts';
import { inDoubt } from '../../common/asked.ts';
import { inches, ratioSaid } from '../../common/said.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { restingOn } from '../compared/lacking.ts';
import { isLashKnownIn, isSameLack } from '../read/lack.ts';
import { meanOf } from '../read/passes.ts';

/** The lift with the lash put back that is known to be in it. */
const gross = ({ read }: SetUpKnown): number =>
  meanOf(read.valve.used) + (read.setUp.lash === 'set' ? (read.setUp.lashSetting ?? 0) : 0);

/** Nothing speaks against it but what is asked of it, and lash by a known amount. */
const isReadable = ({ result, lacks, doubts, differs, poor }: SetUpKnown): boolean =>
  result !== undefined &&
  differs === undefined &&
  poor === undefined &&
  lacks.length > 0 &&
  lacks.every((lack) => isLashKnownIn(lack) || doubts.some((doubt) => isSameLack(doubt, lack)));

/** Later set-ups of the arm on the same spring that came out otherwise, and may not be told by themselves yet. */
function otherwise(explained: GroupExplained): SetUpKnown[] {
  const resting = restingOn(explained);
  if (resting?.result === undefined) return [];
  const { number, spring } = resting.read.setUp;
  return explained.known.filter(
    (each) =>
      each.read.setUp.number > number &&
      each.read.setUp.spring === spring &&
      isReadable(each) &&
      Math.abs(gross(each) - gross(resting)) > allowance('odd-beyond'),
  );
}

/** ` Set-up 2 is not counted: its passes lie .014 in apart.` */
const poorSaid = ({ known }: GroupExplained): string =>
  known
    .flatMap(({ read, poor }) =>
      poor?.facts === undefined ? [] : [` Set-up ${read.setUp.number} is not counted: ${poor.facts}.`],
    )
    .join('');

/** ` Set-up 2 came out 1.552, and is asked about.`: that it is there is said beside what the word rests on. */
export const otherwiseSaid = (explained: GroupExplained): string =>
  poorSaid(explained) +
  otherwise(explained)
    .map(({ read: { setUp }, result, doubts }) => {
      const back = setUp.lash === 'set' && setUp.lashSetting !== undefined ? setUp.lashSetting : undefined;
      const put = back === undefined ? '' : ` with its ${inches(back)} of lash put back`;
      return ` Set-up ${setUp.number} came out ${ratioSaid(result?.ratio ?? 0)}${put}${doubts.length > 0 ? ', and is asked about' : ''}.`;
    })
    .join('');

/** The test of what is asked of them. */
export const testOfOtherwise = (explained: GroupExplained): string | undefined =>
  otherwise(explained)
    .flatMap(({ questions }) => questions)
    .find(inDoubt)?.test;
