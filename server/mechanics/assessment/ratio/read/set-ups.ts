import type { Subject } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import type { AnswerEvidence, Evidence, SetUpEvidence } from '../../evidence.ts';
import { answersOf } from './answers.ts';
import { answersOfArm } from './answers-of-arm.ts';
import { answersOfPair } from './answers-of-pair.ts';
import { withSayings } from './sayings.ts';

/** A set-up as it is known now, with what was looked at since. */
export interface SetUpNow extends SetUpEvidence {
  /** The arm was not named for it, but no other was ever named on this valve. */
  readonly armTaken: boolean;
  /** Answers to its questions and to those of its arm, the earlier first. */
  readonly answers: readonly AnswerEvidence[];
}

/** Arms that were ever named on the valve: with a set-up, on the sheet, or as what sits there now. */
function armsNamed(evidence: Evidence, setUps: readonly SetUpEvidence[], place: string): ReadonlySet<string> {
  const all = [...setUps, ...evidence.sheet.filter(({ standing }) => standing), ...evidence.seats];
  return new Set(all.filter((each) => placeOf(each) === place).flatMap(({ armId }) => armId ?? []));
}

function armOf(
  evidence: Evidence,
  setUps: readonly SetUpEvidence[],
  setUp: SetUpEvidence,
): Pick<SetUpNow, 'armId' | 'armTaken'> {
  if (setUp.armId !== undefined) return { armId: setUp.armId, armTaken: false };
  // The arm that was on came off, and was never named: it is not the one that is there now.
  if (setUp.putOnLater !== undefined) return { armTaken: false };
  const named = [...armsNamed(evidence, setUps, placeOf(setUp))];
  const [only] = named;
  return named.length === 1 && only !== undefined ? { armId: only, armTaken: true } : { armTaken: false };
}

/** The line of the first pass of a set-up. */
const firstLine = ({ passes }: Evidence, id: string): number =>
  Math.min(...passes.filter(({ setUpId }) => setUpId === id).map(({ line }) => line));

/**
 * The set-ups by their number, each as it is known now: what is said late judges the readings already there. Which
 * valve and arm it is comes first, since questions about an arm are answered for all of its set-ups.
 */
export function setUpsNow(evidence: Evidence): SetUpNow[] {
  const { statements, answers } = evidence;
  const placed = evidence.setUps.map((setUp) => withSayings(setUp, statements, answersOf(setUp.id, answers)));
  const armed = placed.map((place) => ({ ...place, ...armOf(evidence, placed, place) }));
  return placed
    .map((place, index) => {
      const arm = armOf(evidence, placed, place);
      const own = [
        ...answersOf(place.id, answers),
        ...answersOfArm({ ...place, ...arm }, answers, firstLine(evidence, place.id)),
        ...answersOfPair(evidence, { ...place, ...arm }, armed),
      ];
      const given = own.toSorted((a, b) => a.line - b.line);
      return { ...withSayings(evidence.setUps[index] ?? place, statements, given), ...arm, answers: given };
    })
    .sort((a, b) => a.number - b.number);
}

/** What a question or a wish about one set-up is about. */
export const setUpSubject = ({ cylinder, valve, id, number }: SetUpNow): Subject => ({
  of: 'set-up',
  cylinder,
  valve,
  setUpId: id,
  number,
});
