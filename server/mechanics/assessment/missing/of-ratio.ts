import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { isDial } from '../../kit/lift-tools.ts';
import { lowerFirst, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { GroupExplained } from '../ratio/compared/explain.ts';
import type { SetUpKnown } from '../ratio/compared/known.ts';
import { lacksOfGroup, restingOn, wasRead } from '../ratio/compared/lacking.ts';
import { cardIsOther, cardSaid, isDown, isOpen, lobeAction, readOthers } from '../ratio/compared/lobe-low.ts';
import { answerLack, isSameLack, type RatioLack } from '../ratio/read/lack.ts';
import { lobePassesWanted, passToRead } from '../ratio/read/lobe-passes.ts';
import { setUpSubject, setUpsNow } from '../ratio/read/set-ups.ts';
import { lobeAgainstCard, lobesOff } from '../ratio/told/lobe-card.ts';
import { goOn, startedFor } from './go-on.ts';
import { MUST_TURN, type Need, need } from './need.ts';
import { ofLack } from './of-lack.ts';
import { oneValve } from './one-valve.ts';
import { passesLeft } from './passes-left.ts';

const PASSES = 3;

/** Its lobe alone was read, and a set-up with nothing lacking works with that: no lift is wanted of it. */
const isServing = (each: SetUpKnown, known: readonly SetUpKnown[]): boolean =>
  !wasRead(each) &&
  known.some(
    ({ read, lacks }) =>
      read.lobe.from?.setUpId === each.read.setUp.id &&
      read.valve.used.length >= PASSES &&
      lacks.length === 0,
  );

/** Its passes were struck out, or speak against it beside a sound one: nobody wants them once more. */
const isGivenUp = (evidence: Evidence, each: SetUpKnown, known: readonly SetUpKnown[]): boolean =>
  each.poor !== undefined ||
  isServing(each, known) ||
  (!wasRead(each) &&
    evidence.passes.some(
      ({ setUpId, kind, standing }) => setUpId === each.read.setUp.id && kind === 'valve-lift' && !standing,
    ) &&
    known.some(({ read }) => read.valve.used.length >= PASSES));

/** `newest`: the number of the set-up that is gone on with; none where another reading is wanted first. */
function ofPasses(evidence: Evidence, { known, group }: GroupExplained, newest: number | undefined): Need[] {
  const last = known.findLast((each) => !isGivenUp(evidence, each, known))?.read;
  if (last === undefined) return [];
  const at = placeOf(group);
  const [lobes, lifts] = [last.lobe.passes.used.length, last.valve.used.length];
  const lobesWanted = lobePassesWanted(last);
  const about = setUpSubject(last.setUp);
  const isBegun = last.setUp.number === newest;
  const hand = isDial(last.setUp.tool) ? ', small hand first' : '';
  const ofLobe = need(
    `lobe-passes:${group.key}`,
    `lobe lift ${at}: ${Math.min(lobes, lobesWanted)} of ${lobesWanted} ${lobesWanted === 1 ? 'pass' : 'passes'}`,
    `Read the lobe lift of ${at} ${last.setUp.lobeSource === 'caliper' ? 'on the loose cam' : 'at the lifter'}, ${passesLeft(lobesWanted - lobes)}.`,
    lobes >= lobesWanted,
    {
      ...MUST_TURN,
      // One of the two alone is no ratio.
      begun: lobes === 0 && lifts > 0,
      // The indicator stays where it is until all of its passes are in.
      started: lifts === 0 && isBegun,
      about,
      reads: 'lobe-lift',
    },
  );
  const isAtValve = passToRead(last) === 'valve-lift';
  const ofValve = need(
    `valve-passes:${group.key}`,
    `valve lift ${at}: ${Math.min(lifts, PASSES)} of ${PASSES} passes`,
    `Read the valve lift of ${at}, ${passesLeft(PASSES - lifts)}${hand}.`,
    lifts >= PASSES,
    {
      ...MUST_TURN,
      begun: isAtValve && lifts === 0 && lobes > 0,
      // Its passes stay what is next until all of them are in.
      started: isAtValve && lifts < PASSES && isBegun,
      about,
      reads: 'valve-lift',
    },
  );
  return [...(lobesWanted > 0 && last.setUp.lobeSource !== 'guess' ? [ofLobe] : []), ofValve];
}

/** An open doubt is asked as a question; what was found to be so is entered again, by the name it has in the headline. */
const isAskedFor = (lack: RatioLack, doubts: readonly RatioLack[]): boolean =>
  lack.code === 'enter-again' || !doubts.some((doubt) => isSameLack(doubt, lack));

/** Without a pass there is nothing to do but to read it: that is asked for by how many are there. */
const isOfPasses = ({ code }: RatioLack): boolean => code === 'no-pass' || code === 'none-back-at-zero';

function ofLacks(evidence: Evidence, explained: GroupExplained): Need[] {
  const resting = restingOn(explained);
  // Which of several set-ups holds is asked as a question too.
  const which = resting?.differs?.question;
  const asked = [
    ...(resting?.doubts ?? []),
    ...(which === undefined || which.answered !== undefined ? [] : [answerLack(which)]),
  ];
  const all = lacksOfGroup(explained);
  const { setUp, meets } = startedFor(evidence, explained);
  const lacks =
    resting === undefined
      ? // It is set up as wanted, and no pass is read yet: only the passes are lacking.
        meets({ code: 'light-spring-first' })
        ? []
        : all.filter(({ code }) => code === 'enter-again' || code === 'light-spring-first')
      : resting.lacks.filter((lack) => isAskedFor(lack, asked) && !isOfPasses(lack));
  // Where the headline asks a doubt first, so does what is next.
  const begun = explained.known.some(wasRead) && lacks[0] === all[0];
  const goesOn = setUp !== undefined && lacks.some(meets) ? [goOn(explained, setUp)] : [];
  const left = goesOn.length === 0 ? lacks : lacks.filter((lack) => !meets(lack));
  return [...goesOn, ...left.map((lack) => ofLack(lack, explained.group, resting?.read.setUp, begun))];
}

/** A lobe well under its card: those beside it tell whether it is the lobe or the card. */
function ofLobes(evidence: Evidence, explained: readonly GroupExplained[]): Need[] {
  const known = [...new Set(explained.flatMap((each) => each.known))];
  const down = lobesOff(
    known.flatMap((each) =>
      lobeAgainstCard(evidence, each, known, false, cardSaid(explained, placeOf(each.read.setUp))),
    ),
  )
    .filter((off) => isDown(off) && isOpen(off))
    .filter((off) => !cardIsOther(explained, placeOf(off)));
  return down.map((off) =>
    need(
      `${lobeAction(off)}:${off.cylinder}-${off.valve}`,
      lobeAction(off) === 'lobe-again'
        ? `the lobe of ${placeOf(off)} once more: it reads under its card, and the valve shows nothing of it`
        : `the lobes beside ${placeOf(off)}, which reads under its card`,
      `${placeOf(off)}: ${lowerFirst(readOthers(off))}`,
      false,
      { ...MUST_TURN, begun: true },
    ),
  );
}

/** Set up for its lobe alone, to tell another lobe of its side from the card: no lift is wanted of it. */
function isForLobe({ known, group }: GroupExplained, all: readonly GroupExplained[]): boolean {
  const alone = known.every(
    (each) =>
      !wasRead(each) && each.read.lobe.source === 'indicator' && each.read.lobe.passes.used.length > 0,
  );
  return (
    alone &&
    all.some(
      (other) => sideOfValve(other.group.valve) === sideOfValve(group.valve) && other.known.some(wasRead),
    )
  );
}

/** What the ratio lacks, valve by valve; strong doubts are asked as questions. */
export function ofRatio(evidence: Evidence, explained: readonly GroupExplained[]): Need[] {
  if (explained.length === 0)
    return [need('set-up', 'a reading of the ratio on the engine', oneValve(evidence), false, MUST_TURN)];
  const newest = Math.max(...setUpsNow(evidence).map(({ number }) => number));
  return [
    ...explained.flatMap((each) => {
      if (isForLobe(each, explained)) return [];
      const lacks = ofLacks(evidence, each);
      return [...lacks, ...ofPasses(evidence, each, lacks.length === 0 ? newest : undefined)];
    }),
    ...ofLobes(evidence, explained),
  ];
}
