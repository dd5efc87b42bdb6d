import type { Evidence } from '../evidence.ts';
import type { MarkedValveDetail } from './detail.ts';
import type { MarkedValve } from './marked-valve.ts';

/** What a pushrod's length, a stand's height or a guide plate would be changed for. */
const MOVED: ReadonlySet<string> = new Set([
  'mark-wide',
  'mark-off-centre',
  'mark-sideways',
  'mark-mounting',
  'marks-apart',
  'length-moves-nothing',
  'marks-sides-swapped',
  'marks-contradict',
  'length-over-what',
]);

const SAID =
  'What moves it on an overhead cam is not worked out: the pivot sets the contact on the cam and the lash as well.';

const withoutAdvice = ({ advice: _, length: __, ...valve }: MarkedValveDetail): MarkedValveDetail => ({
  ...valve,
  inShort: { said: SAID, todo: false },
});

/** A rocker on an overhead cam has no stud, stand or pushrod that its mark is moved by; its width and edge are told. */
export function asOverhead(found: MarkedValve, { engine: { gear = 'pushrod' } }: Evidence): MarkedValve {
  if (gear !== 'cam-rocker' && gear !== 'bucket') return found;
  const questions = found.questions.filter(({ code }) => !MOVED.has(code));
  return {
    ...found,
    questions,
    valve: { ...withoutAdvice(found.valve), questionIds: questions.map(({ id }) => id) },
  };
}
