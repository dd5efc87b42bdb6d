import type { Assessment, Subject } from './assessment.ts';
import { keyOf } from './common/said.ts';
import type { Details } from './details.ts';
import type { JudgementWord } from './words.ts';

/** A verdict word, and what it is said of: the only ones that a face may show. */
interface SaidWord {
  readonly word: JudgementWord;
  /** The judgement, or the row of a table, that says it. */
  readonly id: string;
  readonly about: Subject;
  /** The subject as ids have it: `1-intake`, an arm's id, `build`. */
  readonly key: string;
}

const fromJudgements = ({ judgements }: Assessment): SaidWord[] =>
  judgements.flatMap(({ id, about, word }) =>
    word === undefined ? [] : [{ word, id, about, key: keyOf(about) }],
  );

/** Gaps in the tables of a change and of the sheet: their words are those of their judgements. */
function fromTables({ details }: Assessment): SaidWord[] {
  const ofChange = details.change.flatMap(({ about, gaps }) =>
    gaps.flatMap(({ word, judgementId }) =>
      word === undefined || judgementId === undefined
        ? []
        : [{ word, id: judgementId, about, key: keyOf(about) }],
    ),
  );
  const ofSheet = details.sheet.rows.flatMap(({ cylinder, valve, cells }) =>
    cells.flatMap(({ word, judgementId }): SaidWord[] => {
      const about: Subject = { of: 'valve', cylinder, valve };
      return word === undefined || judgementId === undefined
        ? []
        : [{ word, id: judgementId, about, key: keyOf(about) }];
    }),
  );
  return [...ofChange, ...ofSheet];
}

/** Readings of one loose part against the sizes that parts are made for, and each against each family. */
function ofPart({ about, key, holes, ordinary, stud, ranking }: Details['parts'][number]): SaidWord[] {
  const said = (id: string, word: JudgementWord): SaidWord => ({ word, id, about, key: keyOf(about) });
  return [
    ...holes.flatMap(({ entryId, word, threads, others }) => [
      said(`${key}:hole:${entryId}`, word),
      ...[...threads, ...others].map(({ designation, fit }) =>
        said(`${key}:hole:${entryId}:${designation}`, fit),
      ),
    ]),
    ...ordinary.flatMap(({ entryId, sizes, range }) => [
      ...sizes.map(({ name, word }) => said(`${key}:ordinary:${entryId}:${name}`, word)),
      ...(range === undefined ? [] : [said(`${key}:ordinary:${entryId}:range`, range.word)]),
    ]),
    ...(stud?.threads ?? []).map(({ designation, word }) => said(`${key}:stud:${designation}`, word)),
    ...(ranking?.candidates ?? []).flatMap(({ family, reasons }) =>
      reasons.flatMap(({ kind, word }) =>
        word === 'not-known' ? [] : [said(`${key}:family:${family.id}:${kind}`, word)],
      ),
    ),
  ];
}

const fromParts = ({ details }: Assessment): SaidWord[] => details.parts.flatMap(ofPart);

/** Every verdict word with its subject that a face may show; none other may stand anywhere. */
export const wordsOf = (assessment: Assessment): SaidWord[] => [
  ...fromJudgements(assessment),
  ...fromTables(assessment),
  ...fromParts(assessment),
];
