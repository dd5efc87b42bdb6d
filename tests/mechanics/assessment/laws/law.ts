import type { Assessment, Judgement } from '../../../../server/mechanics/assessment/assessment.ts';
import type {
  Evidence,
  SetUpEvidence,
  ValvePlace,
} from '../../../../server/mechanics/assessment/evidence.ts';

/** A generated build and what is said of it. */
export interface Assessed {
  readonly seed: number;
  readonly evidence: Evidence;
  readonly assessment: Assessment;
}

/** What of a law a build breaks, in words; empty where it keeps it. */
export type Law = (assessed: Assessed) => string[];

export const placeOf = ({ cylinder, valve }: ValvePlace): string => `${cylinder} ${valve}`;

/** Standing passes of one kind, in the order in which they were read. */
export const passesIn = ({ passes }: Evidence, setUp: SetUpEvidence, kind: string) =>
  passes
    .filter((pass) => pass.standing && pass.setUpId === setUp.id && pass.kind === kind)
    .toSorted((a, b) => a.pass - b.pass);

/** A word against what the arm is held to be. */
export const isAgainstArm = ({ against }: Judgement): boolean =>
  ['mark', 'sold-as', 'planned', 'nominal'].includes(against.to);

/** Every sentence that a face may show as it is. */
export const sentencesOf = ({ judgements, headlines, stop, next, missing }: Assessment): string[] => [
  ...[...judgements, ...headlines, ...missing].map(({ sentence }) => sentence),
  ...stop.flatMap(({ sentence, wayOut }) => [sentence, wayOut]),
  ...(next === undefined ? [] : [next.sentence, next.reason]),
];

/** The set-ups as they are known now: what was said of them late is in them. That it is, told-late.ts holds them to. */
export const setUpsNow = ({ assessment }: Assessed): SetUpEvidence[] =>
  assessment.details.setUps.map(({ setUp }) => setUp);
