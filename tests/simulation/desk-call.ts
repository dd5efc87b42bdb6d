import type {
  AssessedQuestion,
  Assessment,
  NextAction,
} from '../../server/mechanics/assessment/assessment.ts';
import { keptWords } from '../../server/mechanics/assessment/common/asked.ts';
import { ACTIONS } from '../../server/mechanics/explain-readings/types.ts';
import { askFor } from '../mechanics/explain-readings/follow.ts';
import type { Chance } from '../mechanics/explain-readings/random.ts';
import type { TrueCall } from '../mechanics/explain-readings/simulated-call.ts';
import { found } from './caller.ts';
import { drawnCall } from './drawn.ts';
import { heardOf, type Judged, judgedAgainst } from './hear.ts';
import { ELSEWHERE, RecordedCall } from './recorded-call.ts';
import { ruledOn } from './score-rows.ts';

const MOST_STEPS = 30;
const SAME_AT_MOST = 4;

export interface DeskFollowed extends Judged {
  readonly steps: number;
  /** What was asked for again and again; left out where the call came to its end. */
  readonly stuckAt?: string;
  readonly recorded: RecordedCall;
}

/** One more pass, small hand first, as the last one was read. */
function passAgain(recorded: RecordedCall): void {
  recorded.take({ ...askFor('one-more-pass', recorded.taken, recorded.call), counted: true });
}

function strikeAndReadAgain(recorded: RecordedCall, ids: readonly string[]): void {
  const standing = new Set(
    recorded.build.evidence().passes.flatMap(({ id, standing: is }) => (is ? [id] : [])),
  );
  const gone = ids.filter((id) => standing.has(id));
  for (const id of gone) recorded.build.strike(id, 'found to be wrong');
  if (gone.length > 0) passAgain(recorded);
}

/** A question is looked into and answered under its id; what was wrong is put right. */
function lookInto(chance: Chance, recorded: RecordedCall, question: AssessedQuestion): void {
  const { id, code, ask, about, restsOn, answered } = question;
  if (answered?.found === true) {
    strikeAndReadAgain(recorded, restsOn);
    return;
  }
  const was = found(chance, recorded.call, code);
  const setUpId = about.of === 'set-up' ? { setUpId: about.setUpId } : {};
  const common = { question: keptWords(ask), questionId: id, code, ...setUpId };
  // The swap test was asked for, and the arm was moved for it.
  if (code === 'arm-sits-elsewhere') recorded.build.answer({ ...common, answer: 'moved' });
  // A mark of these calls is a ratio, the arm's own or another's: whoever looks at it again reads the same.
  else if (code === 'stamp-is-ratio') recorded.build.answer({ ...common, answer: 'ratio' });
  else if (code === 'lash-left-in' && was === undefined) recorded.build.answer({ ...common, answer: 'zero' });
  else {
    const answer = was === undefined ? 'not-found' : 'found';
    recorded.build.answer({ ...common, answer, found: was !== undefined });
  }
  if (was === 'card') recorded.cardPutRight();
  if (was === 'reading') {
    if (code === 'lash-left-in') recorded.act('lash-to-zero');
    else if (code === 'plunger-tilted' || code === 'alignment-not-said') recorded.act('align-plunger');
    else strikeAndReadAgain(recorded, restsOn);
  }
}

/** A pass that stands apart is struck out, as somebody has looked at it. */
function strikeAside(recorded: RecordedCall, { details }: Assessment, action: string): void {
  const numbers = [...action.matchAll(/\d+/g)].map(([number]) => Number(number));
  const named = ({ passes }: (typeof details.setUps)[number]) =>
    passes.filter(({ pass }) => numbers.includes(pass));
  const asides = details.setUps.flatMap(named).filter(({ aside }) => aside !== undefined);
  const meant = asides.length > 0 ? asides : details.setUps.slice(-1).flatMap(named);
  strikeAndReadAgain(
    recorded,
    meant.map(({ entryId }) => entryId),
  );
}

/** Does what is asked for; false where the ratio is told and something else is next. */
function does(chance: Chance, recorded: RecordedCall, next: NextAction, assessment: Assessment): boolean {
  const [action = ''] = next.action.split(':');
  const question = assessment.questions.find(({ id }) => next.id === `next:${id}`);
  const reading = ACTIONS.find((each) => each === action);
  const { about } = next;
  const elsewhere = about?.of === 'valve' && about.cylinder === ELSEWHERE;
  if (next.step !== 'ratio') return false;
  if (question !== undefined) lookInto(chance, recorded, question);
  else if (reading === 'light-spring-solid-lifter' || action === 'sinking')
    recorded.take({
      ...askFor('light-spring-solid-lifter', recorded.taken, recorded.call),
      lashSet: true,
    });
  else if (elsewhere && (reading === 'lobe-at-lifter' || action === 'lobe-passes'))
    recorded.takeLobeElsewhere();
  else if (action === 'read-back' && next.sentence.includes('put right')) {
    recorded.entriesPutRight();
    recorded.act('read-back');
  } else if (reading !== undefined) recorded.act(reading);
  else if (action === 'valve-passes') passAgain(recorded);
  else if (action === 'lobe-passes') recorded.act('lobe-at-lifter');
  else if (action === 'lash-not-said') recorded.act('lash-to-zero');
  else if (action.startsWith('enter-again')) strikeAside(recorded, assessment, next.action);
  else return false;
  return true;
}

/** A call at the desk from its first reading: what the assessment says is next is done, till the ratio is told. */
export function followDesk(chance: Chance, call: TrueCall): DeskFollowed {
  const recorded = new RecordedCall(chance, call);
  recorded.take({ of: 'valve-lift', spring: call.spring, lifter: call.lifter });
  const seen = new Map<string, number>();
  let steps = 0;
  for (;;) {
    const assessment = recorded.build.assess();
    const { next } = assessment;
    const { result, word } = heardOf(assessment);
    const end = () => ({
      ...judgedAgainst(call, result, word, ruledOn(recorded.build, word)),
      steps,
      recorded,
    });
    if (next === undefined) return end();
    const times = (seen.get(next.id) ?? 0) + 1;
    seen.set(next.id, times);
    if (times > SAME_AT_MOST || steps >= MOST_STEPS) return { ...end(), stuckAt: next.id };
    if (!does(chance, recorded, next, assessment)) return end();
    steps += 1;
  }
}

/** So many calls about an arm with a mark. */
export function followDesks(chance: Chance, calls: number): readonly DeskFollowed[] {
  const found: DeskFollowed[] = [];
  while (found.length < calls) {
    const call = drawnCall(chance);
    if (call.said.mark !== undefined) found.push(followDesk(chance, call));
  }
  return found;
}
