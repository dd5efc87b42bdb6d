import type { NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { NotToRun, Subject } from '../assessment.ts';
import { listed, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { nutHasMoved } from '../lash/nut-moved.ts';
import { lastSaid, noisyValve } from './answers.ts';
import { NOT_RUN, SIGNS, toldAs, whySaid } from './damage.ts';
import type { NoiseRecord } from './of-record.ts';

const BUILD: Subject = { of: 'build' };

const OF_ENGINE: ReadonlySet<string> = new Set(['noise-oil']);

/**
 * Nuts of the lash log that had moved, whichever valve is heard; where one was answered of, it is told with that: of the
 * valve that is named, or of those of the log where none is.
 */
const movedInLog = (
  { lash }: NoiseRecord,
  place: ValvePlace | undefined,
  { answered }: { readonly answered: boolean },
): ValvePlace[] =>
  lash.valves.filter(
    (valve) =>
      nutHasMoved(valve, lash) && !(answered && (place === undefined || placeOf(place) === placeOf(valve))),
  );

/** The one valve that it is told of, where it is one and one valve is heard; else the build. */
const subjectOf = ([only, ...more]: readonly ValvePlace[], place: ValvePlace | undefined): Subject =>
  only !== undefined && more.length === 0 && place !== undefined ? valveSubject(only) : BUILD;

/** What is done first to a lock that let go goes by what it is. */
function firstOf(question: NoiseQuestion, first: string, { engine }: Evidence): string {
  const kind = adjusterKind(engine);
  if (question === 'noise-nut') return ADJUSTER_WORDS[kind].mend;
  return question === 'noise-thread' && kind !== 'stud' ? 'Change both.' : first;
}

/** What was told of damage, worst first, as clauses for the line of the answer. */
export const foundSaid = (evidence: Evidence): string[] =>
  [...SIGNS, ...NOT_RUN].flatMap(({ question, answer, why }) =>
    toldAs(question, lastSaid(question, evidence)) === answer
      ? [whySaid({ question, answer, why }, evidence)]
      : [],
  );

/** Why nobody runs it while its noise is looked into: it runs now, its oil is low, or a part that was seen is bad. */
export function noiseNotToRun(evidence: Evidence, record: NoiseRecord): NotToRun[] {
  const place = noisyValve(evidence);
  const about = place === undefined ? BUILD : valveSubject(place);
  const runs: NotToRun[] =
    evidence.call.engineState === 'runs'
      ? [
          {
            id: 'not-to-run:noise:runs',
            what: 'run',
            about: BUILD,
            sentence: 'Do not run it: shut it off, and leave it off until the cause is found.',
            wayOut: 'Shut it off. Then look what moved, with nothing turned.',
            atOnce: true,
          },
        ]
      : [];
  const told = NOT_RUN.filter(({ question, answer }) => lastSaid(question, evidence)?.answer === answer);
  const answered = told.some(({ question }) => question === 'noise-nut');
  const logged = movedInLog(record, place, { answered });
  return [
    ...runs,
    ...told.map(
      ({ question, answer, why, first }): NotToRun => ({
        id: `not-to-run:${question}:${answer}`,
        what: 'run',
        about: OF_ENGINE.has(question) ? BUILD : about,
        sentence: `Do not run it: ${whySaid({ question, answer, why }, evidence)}.`,
        wayOut: firstOf(question, first, evidence),
      }),
    ),
    ...(logged.length === 0
      ? []
      : NOT_RUN.filter(({ question }) => question === 'noise-nut').map(
          ({ question, first }): NotToRun => ({
            id: 'not-to-run:noise-nut:log',
            what: 'run',
            about: subjectOf(logged, place),
            sentence: `Do not run it: the ${ADJUSTER_WORDS[record.lash.adjuster].part} of ${listed(logged.map(placeOf))} has moved.`,
            wayOut: firstOf(question, first, evidence),
          }),
        )),
  ];
}
