import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SetUpEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { type Assessed, isAgainstArm, type Law } from './law.ts';

const AGAIN = 'again';
const LEAST_LIFT = 0.25 * IN;

/** The same set-up once more, later, and every valve lift of it 6 % less. */
function withAgain(evidence: Evidence, setUp: SetUpEvidence): Evidence {
  const id = `${setUp.id}-${AGAIN}`;
  const again = <Entry extends { readonly id: string; readonly line: number }>(entry: Entry): Entry => ({
    ...entry,
    id: `${entry.id}-${AGAIN}`,
    line: entry.line + 10_000,
    setUpId: id,
  });
  const own = <Entry extends { readonly setUpId?: string }>(entries: readonly Entry[]): Entry[] =>
    entries.filter(({ setUpId }) => setUpId === setUp.id);
  const less = own(evidence.passes).map((pass) =>
    again(pass.kind.startsWith('valve-lift') ? { ...pass, value: pass.value * 0.94 } : pass),
  );
  return {
    ...evidence,
    setUps: [...evidence.setUps, { ...setUp, id, number: evidence.setUps.length + 1 }],
    statements: [...evidence.statements, ...own(evidence.statements).map(again)],
    answers: [...evidence.answers, ...own(evidence.answers).map(again)],
    passes: [...evidence.passes, ...less],
  };
}

/** The set-up whose passes a word against an arm rests on, where nothing else was read of that arm there. */
function wordedOn({ evidence, assessment }: Assessed): SetUpEvidence | undefined {
  const worded = assessment.judgements.find((each) => isAgainstArm(each) && each.word !== undefined);
  const key = worded?.id.split(':').slice(1, -1).join(':');
  const restsOn = assessment.quantities.find(({ id }) => id === `arm-ratio:${key}`)?.restsOn ?? [];
  const own = evidence.setUps.filter(({ id }) =>
    evidence.passes.some(({ setUpId, ...pass }) => setUpId === id && restsOn.includes(pass.id)),
  );
  const [only, ...others] = own;
  const lifts = evidence.passes.filter(({ setUpId, kind }) => setUpId === only?.id && kind === 'valve-lift');
  // 6 % of less than this is nothing that sets two readings apart.
  return others.length === 0 && lifts.every(({ value }) => value > LEAST_LIFT) ? only : undefined;
}

/** Law 5: a set-up that comes out otherwise replaces none before it by being later; no word stands on either. */
export const readAgainReplacesNothing: Law = (assessed) => {
  const setUp = wordedOn(assessed);
  if (setUp === undefined) return [];
  const { judgements, details, questions } = assess(withAgain(assessed.evidence, setUp));
  const [before, later] = [setUp.id, `${setUp.id}-${AGAIN}`].map((id) =>
    details.setUps.find((each) => each.setUp.id === id),
  );
  if (before === undefined || later === undefined) return [`${setUp.id}: it is gone after it was read again`];
  const isOfBoth = ({ restsOn }: { readonly restsOn: readonly string[] }) =>
    [before, later].every(({ passes }) => passes.some(({ entryId }) => restsOn.includes(entryId)));
  // What is wrong with one of them is said of it; else the two are asked about, and no word stands unless a third agrees.
  const asked = questions.filter(
    ({ code, weight, ...each }) => code === 'set-ups-differ' && weight === 'strong' && isOfBoth(each),
  );
  const silent = later.lacks.length === 0 && before.lacks.length === 0;
  // A word rests on them where it rests on what is in doubt: of another arm on this valve it may rest on their lobe.
  const inDoubt = asked.flatMap(({ restsOn }) => restsOn);
  const restsOnDoubt = ({ restsOn }: { readonly restsOn: readonly string[] }) =>
    inDoubt.some((id) => restsOn.includes(id));
  const worded = judgements.filter(
    (each) => isAgainstArm(each) && each.word !== undefined && restsOnDoubt(each),
  );
  return [
    ...(silent ? [`${setUp.id}: read again 6 % less, and nothing is asked or lacking`] : []),
    ...worded.map(({ id, word }) => `${id}: ${word}, while it is asked which set-up holds`),
  ];
};
