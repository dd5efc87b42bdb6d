import type { AssessedQuantity, AssessedQuestion, Headline, Judgement } from '../assessment.ts';
import type { RaisedStop } from '../stop.ts';

/** What each part of the assessment gives; `stop` are reasons it raises, before a person's word on them. */
export interface PartSaid<Detail> {
  readonly quantities: readonly AssessedQuantity[];
  readonly judgements: readonly Judgement[];
  readonly questions: readonly AssessedQuestion[];
  readonly stop: readonly RaisedStop[];
  readonly headlines: readonly Headline[];
  readonly detail: Detail;
}
