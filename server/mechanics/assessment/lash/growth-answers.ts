import { ADJUSTER_WORDS, type AdjusterKind } from '../../lash/adjuster-words.ts';
import type { LashGrowth, LashQuestion } from '../../lash/types.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { turned } from '../common/answers-of.ts';

/** Answers by which a gap that closed is the valve’s own doing. */
export const ONE_HEAT = 'one-heat';
export const HELD = 'held';
/** The cause of a growth was found, and nothing of it is left to be done. */
export const PUT_RIGHT = 'put-right';

/** What may be answered to each question of a growth: a yes is the cause of one, and says of another that it was read right. */
export const ANSWERS: Readonly<Record<LashQuestion['code'], AssessedQuestion['answers']>> = {
  'lash-grew': [
    {
      code: 'found',
      label: 'Yes',
      changes: 'The cause is known; it is put right before the lash is set again.',
      // It was read right: what is done with the valve is told of its work.
      leadsTo: 'nothing',
    },
    {
      code: PUT_RIGHT,
      label: 'Yes, and it is put right',
      changes: 'The gap is set, and read again once it has run.',
    },
    {
      code: 'not-found',
      label: 'Looked: no',
      changes: 'The next cause is looked for; the lash is not set again.',
    },
  ],
  'lash-grew-everywhere': [
    {
      code: 'not-found',
      label: 'Yes, all in the same way',
      changes: 'It is no way of reading: the next cause is looked for, the oil first.',
    },
    {
      code: 'found',
      label: 'No, or nobody knows',
      changes: 'One is set again step by step, and read at the heat it was set at.',
      leadsTo: turned('set one again step by step, and read it at the heat that it was set at.'),
    },
  ],
  'lash-closed': [
    {
      code: ONE_HEAT,
      label: 'Yes, at one heat',
      changes:
        'The valve may be sinking into its seat: a qualified shop looks, and the gap is not set away before.',
    },
    {
      code: 'other-heat',
      label: 'No, or nobody knows',
      changes: 'It is read again at the heat it was set at; until then nothing is told of it.',
    },
  ],
  'lash-closed-nut': [
    {
      code: 'moved',
      label: 'It has moved',
      changes: 'Its lock let go: that is put right before the gap is set again.',
    },
    {
      code: HELD,
      label: 'Looked: it held',
      changes:
        'The valve may be sinking into its seat: a qualified shop looks, and the gap is not set away before.',
    },
  ],
  'lash-heat-unsaid': [
    {
      code: 'same',
      label: 'Yes, at the same heat',
      changes: 'That heat is put into the log; then the two are set against each other.',
    },
    {
      code: 'other',
      label: 'No, or nobody knows',
      changes: 'They stay apart: it is read again at the heat it was set at.',
    },
  ],
  'lash-heat-differs': [
    {
      code: 'not-found',
      label: 'Yes, as the log has them',
      changes: 'They stay apart: it is read again at the heat it was set at.',
    },
    {
      code: 'found',
      label: 'No: a heat in the log is wrong',
      changes: 'That heat is put right in the log; then the two are set against each other.',
    },
  ],
};

const NOSE = 'that lobe’s lift is read against the others, as a worn nose never shows in the gap';

/** What is answered of a gap that grew, by what its lock did as far as anybody had looked. */
function grewSaid(found: boolean, nut: LashGrowth['nut'], kind: AdjusterKind): string {
  const { part, lets } = ADJUSTER_WORDS[kind];
  const isLock = lets === 'lock' && nut !== 'held';
  if (found)
    return isLock
      ? `The ${part} let go, as was answered: why it did is put right first, and the gap is set last.`
      : 'Its cause was found, as was answered: that is put right, the rest on that valve is looked at, and the gap is set last.';
  return isLock
    ? `Looked: the ${part} had not moved. Then something on that valve wears; it is not set again before that is found, and ${NOSE}.`
    : `Looked: nothing was found there. It is not set again before its cause is found, and ${NOSE}.`;
}

/** What follows from the answer to a question of a growth, as the end of the headline that asked it. */
export function followsFrom(
  code: string,
  chosen: string,
  nut: LashGrowth['nut'],
  kind: AdjusterKind,
): string | undefined {
  switch (`${code} ${chosen}`) {
    case 'lash-grew found':
    case 'lash-grew not-found':
      return grewSaid(chosen === 'found', nut, kind);
    case `lash-grew ${PUT_RIGHT}`:
      return 'Its cause was found and put right, as was answered: the gap is set, and read again.';
    case 'lash-heat-unsaid same':
      return 'They were read at the same heat, as was answered: it is put into the log first.';
    case 'lash-heat-unsaid other':
    case 'lash-heat-differs not-found':
      return 'It is read again at the heat it was set at; until then nothing is told of what it did.';
    case 'lash-heat-differs found':
      return 'A heat in the log is wrong, as was answered: it is put right there first.';
    case 'lash-unusual not-found':
      return 'It is what is asked for, as was answered.';
    case 'lash-unusual found':
      return 'It is not what is asked for, as was answered: that is found out before it is set again.';
    default:
      return undefined;
  }
}

/** What is asked of a gap that closed: until it is answered the gap is not set, and no turn of it is told. */
export const OF_CLOSING: ReadonlySet<string> = new Set(['lash-closed', 'lash-closed-nut']);
