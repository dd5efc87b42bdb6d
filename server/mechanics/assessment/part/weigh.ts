import type { Evidence } from '../evidence.ts';
import { holeBetweenSizes } from './between-sizes.ts';
import { boxAgainstFamily } from './box-family.ts';
import { boxAgainstStud } from './box-studs.ts';
import { answeredAmong, type CountedReading, type PartDoubt, putTo, type Weighed } from './doubts.ts';
import { familyAgainstEngine, mountAgainstFamily } from './family-mount.ts';
import { threadsOfHoles } from './holes.ts';
import { holeAgainstEngine } from './holes-apart.ts';
import { impossibleSizes, milsTyped } from './impossible.ts';
import type { InHand } from './in-hand.ts';
import { boxAgainstStamp, mountAgainstEngine, stampsApart } from './marks-apart.ts';
import { micrometerInHole } from './micrometer-in-hole.ts';
import { studNoThread } from './no-thread.ts';
import { askAlone, oddReading } from './odd-reading.ts';
import { markDoubts, ringsAndWidth, stampOfTwo } from './questions.ts';
import { STANDS_ALONE } from './stands-alone.ts';
import { crestsCounted, studAgainstHole } from './stud-questions.ts';
import { armsAlike, swappedSizes } from './swapped.ts';
import { triedAgainstHole } from './tried-against-hole.ts';
import { moreThanUneven, twoSizes } from './two-sizes.ts';

type Find = (readings: readonly CountedReading[]) => readonly PartDoubt[];

/** Questions whose answer holds for the entries that it was given of, whatever is read after it. */
const HOLDING: readonly { readonly code: string; readonly find: Find }[] = [
  { code: 'sizes-swapped', find: swappedSizes },
  { code: 'arms-alike', find: armsAlike },
  { code: 'stud-no-thread', find: studNoThread(threadsOfHoles) },
  { code: 'two-sizes', find: twoSizes },
  { code: 'hole-between-sizes', find: holeBetweenSizes },
  { code: STANDS_ALONE, find: (own) => askAlone(own) },
];

/** What counts of a part, after what was answered, with every question that its readings raise. */
export function weighed(part: InHand, evidence: Evidence): Weighed {
  const { answers, families = [] } = evidence;
  const put = (before: Weighed, find: Find): Weighed => putTo(before, part, answers, find);
  const single = [impossibleSizes, milsTyped, crestsCounted].reduce<Weighed>(put, {
    readings: part.readings,
    questions: [],
    leftOut: [],
  });
  const settled = HOLDING.reduce((before, { code, find }) => {
    const sets = answeredAmong(part, answers, code);
    return sets.reduce((now, ids) => {
      const own = now.readings.filter(({ id }) => ids.includes(id));
      return own.length === ids.length ? put(now, () => find(own)) : now;
    }, before);
  }, single);
  const finds: readonly Find[] = [
    swappedSizes,
    armsAlike,
    moreThanUneven(settled.questions),
    holeBetweenSizes,
    ringsAndWidth,
    studNoThread(threadsOfHoles),
    studAgainstHole(threadsOfHoles),
    holeAgainstEngine(evidence),
    mountAgainstEngine(evidence),
    mountAgainstFamily(evidence),
    familyAgainstEngine(evidence),
    stampsApart,
    boxAgainstStamp,
    boxAgainstFamily(evidence, part),
    boxAgainstStud(threadsOfHoles),
    triedAgainstHole,
    micrometerInHole,
    oddReading(families),
    (own) => (part.armId === undefined ? stampOfTwo(own) : []),
    markDoubts,
  ];
  return finds.reduce<Weighed>(put, settled);
}
