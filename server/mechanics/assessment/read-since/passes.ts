import { isSince, wasThere } from '../common/since.ts';
import type { AnswerEvidence, Evidence, PassEvidence } from '../evidence.ts';
import { foundIn } from '../ratio/asked/asked.ts';
import { isAboutCard } from '../ratio/asked/conditions.ts';
import { foundBy, passNamed } from '../ratio/read/answers.ts';
import { setUpsRead } from '../ratio/read/set-up-read.ts';
import { type SetUpNow, setUpsNow } from '../ratio/read/set-ups.ts';
import { SAYS_MISREAD } from './says-misread.ts';

const standingIn = ({ passes }: Evidence, { id }: SetUpNow): PassEvidence[] =>
  passes.filter(({ setUpId, standing }) => standing && setUpId === id);

/** The passes that an answer found wrong, of those that were there when it was given. */
function foundWrong(evidence: Evidence, setUp: SetUpNow, answer: AnswerEvidence): PassEvidence[] {
  const then = { ...evidence, passes: evidence.passes.filter((pass) => wasThere(pass, answer)) };
  const reads = setUpsRead(then);
  const own = reads.find((read) => read.setUp.id === setUp.id);
  if (own === undefined) return [];
  const named = passNamed(answer);
  const wrong = new Set(
    foundIn(then, own, reads, answer)
      .filter((question) => SAYS_MISREAD.has(question.code) && !isAboutCard(question))
      .flatMap(({ restsOn }) => restsOn),
  );
  return own.standing.filter(({ id, pass }) => wrong.has(id) && (named === undefined || named === pass));
}

/** Passes of one kind that came after the answer: with the next number, or once more with that of one that was wrong. */
function readSince(own: readonly PassEvidence[], wrong: PassEvidence, answer: AnswerEvidence): boolean {
  const alike = own.filter(({ kind, atLobeLift }) => kind === wrong.kind && atLobeLift === wrong.atLobeLift);
  const last = Math.max(...alike.filter((each) => wasThere(each, answer)).map(({ pass }) => pass));
  return alike.some((each) => isSince(each, answer) && (each.pass > last || each.pass === wrong.pass));
}

function ofSetUp(evidence: Evidence, setUp: SetUpNow): string[] {
  const own = standingIn(evidence, setUp);
  const isCured = (answer: AnswerEvidence) =>
    own.some((pass) => wasThere(pass, answer)) && own.some((pass) => isSince(pass, answer));
  return setUp.answers
    .filter((answer) => (foundBy(answer) === true || passNamed(answer) !== undefined) && isCured(answer))
    .flatMap((answer) => foundWrong(evidence, setUp, answer).filter((wrong) => readSince(own, wrong, answer)))
    .map(({ id }) => id);
}

/** Passes that were found wrong by an answer, and taken again because of it. */
export const passesReadSince = (evidence: Evidence): ReadonlySet<string> =>
  new Set(
    evidence.answers.length === 0 ? [] : setUpsNow(evidence).flatMap((setUp) => ofSetUp(evidence, setUp)),
  );
