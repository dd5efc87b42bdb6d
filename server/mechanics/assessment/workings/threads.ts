import type { AssessedQuestion } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { BUILD, type KeptSet, keptSets } from '../common/kept.ts';
import { listed } from '../common/said.ts';
import type { PreloadEvidence, TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';

type Threaded = KeptSet<PreloadEvidence | TurnsEvidence>;

const NAMES = {
  'stud-nut': 'stud',
  'cup-screw': 'screw at the cup',
  'valve-end-screw': 'screw at the valve',
} as const;
const MOUNTS = ['stud-nut', 'cup-screw', 'valve-end-screw'] as const;
type Mount = (typeof MOUNTS)[number];

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'One of them was wrong',
    changes: 'The turns are worked out again with the thread that is on it.',
    leadsTo: done('work the turns out again with the thread that is on it.'),
  },
  {
    code: 'not-found',
    label: 'Looked: both are right, on different valves',
    changes: 'The question is settled.',
  },
];

const isThreaded = (kept: KeptSet): kept is Threaded => kept.set.of === 'preload' || kept.set.of === 'turns';

/** The size that the build says, and those that its sums went with; of each name once. */
function threadsOn(mount: Mount, sums: readonly Threaded[], { engine }: Evidence): string[] {
  const own = sums.filter(({ set }) => set.mount === mount).map(({ set }) => set);
  const stud = mount === 'stud-nut' ? engine.studSize : undefined;
  const other =
    stud !== undefined && own.some(({ size }) => size !== undefined && size !== stud)
      ? [`the ${stud} of the build`]
      : [];
  return [...new Set([...own.map(({ thread }) => thread), ...other])].sort();
}

function differ(mount: Mount, sums: readonly Threaded[], evidence: Evidence): AssessedQuestion | undefined {
  const names = threadsOn(mount, sums, evidence);
  if (names.length < 2) return undefined;
  const pitches = sums.filter(({ set }) => set.mount === mount).map(({ set }) => set.pitch);
  const more = Math.max(...pitches) / Math.min(...pitches);
  return asked(
    {
      code: 'threads-differ',
      weight: 'strong',
      ask: `Which thread is on the ${NAMES[mount]}?`,
      size: `Sums were kept with ${listed(names)}.${more > 1.001 ? ` The same turn moves ${Math.round((more - 1) * 100)} % further on the coarser one.` : ''}`,
      test: 'measure across the thread and count its pitch, or read the box; then work the turns out again.',
      byLooking: true,
      restsOn: [],
    },
    { about: BUILD, step: 'adjuster', answers: evidence.answers, choices: CHOICES },
  );
}

/** What is asked of the thread of this adjuster; not asked again of sums that were kept before it was found out. */
export function threadQuestion(mount: Mount, evidence: Evidence): AssessedQuestion | undefined {
  const sums = keptSets(evidence).filter(isThreaded);
  const question = differ(mount, sums, evidence);
  if (question?.answered?.found !== true) return question;
  const since = evidence.answers.find(({ id }) => id === question.answered?.entryId)?.line ?? 0;
  const again = sums.filter(({ line, set }) => line > since && set.mount === mount);
  return again.length === 0 ? question : differ(mount, again, evidence);
}

/** Turns that were worked out with one thread are wrong on another: asked of each kind of adjuster. */
export const threadQuestions = (evidence: Evidence): AssessedQuestion[] =>
  MOUNTS.flatMap((mount) => threadQuestion(mount, evidence) ?? []);
