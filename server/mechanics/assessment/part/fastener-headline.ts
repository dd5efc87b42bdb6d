import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import type { AssessedQuestion, Headline } from '../assessment.ts';
import { subjectSaid, upperFirst } from '../common/said.ts';
import { betweenSizes, isShafts, TRY, whereSaid } from './between-sizes.ts';
import type { HoleDetail, StudDetail } from './detail.ts';
import { type CountedReading, idsOfKind } from './doubts.ts';
import { HOLE, threadsNamed } from './holes.ts';
import type { InHand } from './in-hand.ts';
import { eitherSaid } from './size-said.ts';

/** The thread that came out was read, diameter and pitch: it is the fastener. */
function proven({ named }: StudDetail, once: readonly string[]): string {
  const goes = named.filter((designation) => once.includes(designation));
  const said = eitherSaid(goes.length > 0 ? goes : named);
  const hole =
    once.length === 0
      ? 'the hole is still to read'
      : goes.length > 0
        ? 'the hole goes with it'
        : 'the hole does not go with it, so it is not put on that stud; a bushing is a qualified shop’s work';
  return `the thread that came out is ${said}; ${hole}.`;
}

/** Half of the thread was read, or what was read of it cannot all be right. */
function halfRead(stud: StudDetail, once: readonly string[]): string {
  const { named, lacks = '', by, apart } = stud;
  if (apart) return `no thread is named yet. ${lacks}`;
  const [read = 'pitch'] = by;
  const proves = read === 'pitch' ? 'the diameter over the thread' : 'its pitch';
  const goes = once.filter((designation) => named.includes(designation));
  if (goes.length > 0) return `by hole and ${read} it takes ${eitherSaid(goes)}; ${proves} proves it.`;
  if (once.length > 0)
    return `the ${read} of the thread that came out goes with no thread that the hole takes.`;
  const goesWith = named.length === 0 ? 'no ordinary thread of rockers' : eitherSaid(named);
  return `the ${read} of the thread that came out is that of ${goesWith}. ${lacks}`;
}

/** The hole alone: it suggests a fastener, and between sizes not even that. */
function byHole(readings: readonly CountedReading[], holes: readonly HoleDetail[]): string | undefined {
  const once = threadsNamed(holes);
  const [hole] = holes;
  if (hole === undefined) return undefined;
  const tried = holes.find((each) => each.tried !== undefined)?.tried;
  if (tried === 'none')
    return `the hole, ${asEntered(hole.readAs)}, takes no usual stud, as was tried by hand.`;
  if (tried !== undefined)
    return `a ${tried} stud goes through the hole without play: ${eitherSaid(once)}; the thread proves it.`;
  const between = betweenSizes(readings, holes);
  if (between !== undefined && isShafts(readings, between.size))
    return `the hole, ${asEntered(between.hole.readAs)}, is no stud’s: look what holds the rocker, a shaft perhaps.`;
  if (between !== undefined)
    return `the hole reads ${asEntered(between.hole.readAs)}, ${whereSaid(between.hole, between.size)}: ${TRY}.`;
  return once.length === 0 ? undefined : `the hole suggests ${eitherSaid(once)}; the thread proves it.`;
}

/** Readings that do not go together, and nobody has said yet which of them holds. */
const openTwo = (questions: readonly AssessedQuestion[], ids: readonly string[]) =>
  questions.find(
    ({ code, answered, restsOn }) =>
      code === 'two-sizes' && answered === undefined && restsOn.some((id) => ids.includes(id)),
  );

const NO_THREAD =
  'diameter and pitch of the thread that came out are together no ordinary thread of rockers: read both again.';

interface FastenerTold {
  readonly holes: readonly HoleDetail[];
  readonly stud: StudDetail | undefined;
  readonly questions: readonly AssessedQuestion[];
}

/** The hole suggests a fastener; its thread decides, and names it once it was read. */
export function fastenerHeadline(
  { about, key }: InHand,
  readings: readonly CountedReading[],
  { holes, stud, questions }: FastenerTold,
): Headline[] {
  const apart = openTwo(questions, idsOfKind(readings, HOLE));
  const once = apart === undefined ? threadsNamed(holes) : [];
  const whole = stud !== undefined && stud.lacks === undefined && stud.named.length > 0;
  const half = stud !== undefined && stud.lacks !== undefined;
  const crests = questions.find(({ code, answered }) => code === 'crests-counted' && answered === undefined);
  // Where another reading of the pitch says the same, the pitch is known by that.
  const counted = readings.some(({ id }) => crests?.restsOn.includes(id) === true);
  const said =
    crests !== undefined && !whole && counted
      ? `the pitch, as it was counted, is that of no thread of rockers. ${crests.test}`
      : whole
        ? proven(stud, once)
        : stud !== undefined && stud.lacks === undefined
          ? NO_THREAD
          : half
            ? halfRead(stud, once)
            : apart === undefined
              ? byHole(readings, holes)
              : `no stud is named yet: the readings of the hole do not go together. ${apart.test}`;
  if (said === undefined) return [];
  const of = about.name === undefined ? '' : `${subjectSaid(about)}: `;
  return [{ id: `headline:${key}:fastener`, about, step: 'identify', sentence: upperFirst(`${of}${said}`) }];
}
