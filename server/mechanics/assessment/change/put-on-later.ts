import { planOf } from '../../../../shared/schemas/goals.ts';
import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { forSide, plansOf } from '../common/plans.ts';
import { counted, listed, nominalSaid, placeOf } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import { soldRatio } from './stated-ratios.ts';

/*
 * Of a change the arm that is put on record after a reading is often the new one: the reading then is of whatever was on
 * before, which nobody named.
 */

/** Something that was read on a valve before an arm was placed there. */
interface Read extends ValvePlace {
  readonly id: string;
  readonly armId?: string;
  readonly putOnLater?: string;
  readonly soldAsThen?: number;
}

const SAME = 'same-arms';
const same = (a: number, b: number): boolean => Math.abs(a - b) < 0.0005;

const choicesOf = (mark: string): readonly AnswerChoice[] => [
  {
    code: 'arms-before',
    label: 'With the arm that was on before it',
    changes: `It is told of that arm; what a gap leaves with the ${mark} is worked out, and measured.`,
  },
  { code: SAME, label: `With the ${mark} that is on now`, changes: 'It is a reading of that arm.' },
];

/** The mark of an arm that was placed there later, where it is another than what they are sold as, and may be the new one. */
function markOfNew({ putOnLater, valve }: Read, evidence: Evidence): number | undefined {
  const mark = markOn(evidence, putOnLater);
  if (mark === undefined) return undefined;
  const sold = soldRatio(evidence)?.value;
  if (sold !== undefined && same(sold, mark)) return undefined;
  const plans = plansOf(forSide(evidence, sideOfValve(valve)));
  const isNew = plans.length === 0 ? sold !== undefined : plans.some((plan) => same(plan, mark));
  return isNew ? mark : undefined;
}

const isOfChange = ({ call, engine }: Evidence): boolean =>
  planOf(call.goal).isChange === true && (engine.gear ?? 'pushrod') === 'pushrod';

interface Kinds {
  readonly gaps: readonly Read[];
  readonly lifts: readonly Read[];
  readonly ratios: readonly Read[];
}

const isNamed = (setUpId: string, { statements }: Evidence): boolean =>
  statements.some((said) => said.setUpId === setUpId && said.says.armId !== undefined);

/** What was read on a valve before its arm was placed there, and of which nothing else says with what. */
function readBefore(evidence: Evidence): Kinds {
  if (!isOfChange(evidence)) return { gaps: [], lifts: [], ratios: [] };
  const isDoubtful = (read: Read): boolean =>
    read.soldAsThen === undefined && markOfNew(read, evidence) !== undefined;
  const sheet = evidence.sheet
    .filter(({ standing, arms }) => standing && arms === 'these')
    .filter(isDoubtful);
  // While the evidence has no scan among the gaps of its sheet, each is counted by itself.
  const onSheet = new Set(evidence.sheet.map(({ id }) => id));
  const scans = (evidence.scans ?? []).filter(
    (scan) => scan.standing && scan.arms === 'these' && !onSheet.has(scan.id) && isDoubtful(scan),
  );
  return {
    gaps: [...sheet.filter(({ kind }) => GAP_KINDS.some((gap) => gap === kind)), ...scans],
    lifts: sheet.filter(({ kind }) => kind === 'valve-lift'),
    ratios: evidence.setUps.filter((setUp) => !isNamed(setUp.id, evidence) && isDoubtful(setUp)),
  };
}

function askedOf(place: ValvePlace, mark: number, { gaps, lifts, ratios }: Kinds, evidence: Evidence) {
  const isHere = (read: Read): boolean => placeOf(read) === placeOf(place);
  const here = { gaps: gaps.filter(isHere), lifts: lifts.filter(isHere), ratios: ratios.filter(isHere) };
  const what = listed([
    ...counted('gap', here.gaps.length),
    ...counted('valve lift', here.lifts.length),
    ...counted('ratio', here.ratios.length),
  ]);
  const were = here.gaps.length + here.lifts.length + here.ratios.length === 1 ? 'was' : 'were';
  const passes = evidence.passes.filter(
    ({ standing, setUpId }) => standing && here.ratios.some(({ id }) => id === setUpId),
  );
  const name = nominalSaid(mark);
  return asked(
    {
      code: 'gap-arms-then',
      weight: 'weak',
      ask: `The arm stamped ${name} was put on record on ${placeOf(place)} after ${what} ${were} read there. With which arm was that?`,
      knownBy: 'with which arm it was read',
      size: 'Until it is said, what was read there counts as read with the arm before it.',
      test: 'Ask who read it which arm was on.',
      testAtBench: 'Say which arm was on when it was read.',
      byLooking: true,
      restsOn: [...here.gaps, ...here.lifts, ...passes].map(({ id }) => id),
    },
    {
      about: { of: 'valve', cylinder: place.cylinder, valve: place.valve },
      step: 'consequences',
      among: `stamped-${name}`,
      answers: evidence.answers,
      choices: choicesOf(name),
    },
  );
}

/** With which arm it was read what is older than the arm that is on a valve, asked once of each valve. */
export function putOnLaterAsked(evidence: Evidence): AssessedQuestion[] {
  const kinds = readBefore(evidence);
  const all = [...kinds.gaps, ...kinds.lifts, ...kinds.ratios];
  const places = new Map(all.map((read) => [placeOf(read), read]));
  return [...places.keys()].sort().flatMap((key) => {
    const place = places.get(key);
    const mark = place && markOfNew(place, evidence);
    return place === undefined || mark === undefined ? [] : [askedOf(place, mark, kinds, evidence)];
  });
}

/** The same evidence, where what was read before its arm was placed is of the arm that came off, unless it was said otherwise. */
export function withPutOnLater(evidence: Evidence): Evidence {
  if (!isOfChange(evidence)) return evidence;
  const kinds = readBefore(evidence);
  const asOfNew = new Set(
    putOnLaterAsked(evidence)
      .filter((question) => chosenOf(question) === SAME)
      .flatMap(({ about }) => (about.of === 'valve' ? [placeOf(about)] : [])),
  );
  const before = new Set(
    [...kinds.gaps, ...kinds.lifts, ...kinds.ratios].filter((read) => !asOfNew.has(placeOf(read))),
  );
  const isOfBefore = (read: Read): boolean => before.has(read);
  function ofThen<Each extends Read>(read: Each): Each | (Omit<Each, 'armId'> & { comesOff: true }) {
    if (!isOfBefore(read)) return read;
    const { armId: _, ...rest } = read;
    return { ...rest, comesOff: true };
  }
  return before.size === 0
    ? evidence
    : {
        ...evidence,
        sheet: evidence.sheet.map(ofThen),
        setUps: evidence.setUps.map(ofThen),
        ...(evidence.scans === undefined ? {} : { scans: evidence.scans.map(ofThen) }),
      };
}
