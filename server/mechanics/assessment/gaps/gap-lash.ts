import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { mostLash } from '../../lash/usual-lash.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { toRead, toSay } from '../common/lack.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';

/** The question whether the lash was in a gap that was read in one place. */
const LASH_IN_GAP = 'gap-lash-not-said';

/** What has to be known of the lash, as a scan names it too. */
export const LASH_SAID = 'whether the lash was in it: with lash in, it reads that much larger';

export const LASH_UNSAID = toSay('lash-unsaid', LASH_SAID, LASH_IN_GAP);

/** What tells a gap that its lash is in from its limit. */
export const ZERO_LASH = toRead(
  'zero-lash',
  'a reading at zero lash: with lash in it reads that much larger',
);

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'zero', label: 'It was read at zero lash', changes: 'The gap counts as it was read.' },
  {
    code: 'set',
    label: 'Its lash was in it',
    changes: 'With the lash taken up the gap is less by that much.',
  },
];

/** The lash that a valve has: as it was logged last, else the card's, else the most that is usual. */
function lashOf(entry: SheetEvidence, evidence: Evidence): number {
  const { engine, card } = evidence;
  if (entry.lifter === 'hydraulic' || isHydraulicLifter(engine.lifter)) return 0;
  return (
    usableLash(evidence, entry)?.gap.value ?? card[sideOfValve(entry.valve)].lash ?? mostLash(engine.lifter)
  );
}

export interface LashInGap {
  /** By how much the gap may be less with the lash taken up. */
  readonly most: number;
  /** It was answered that it was in it. */
  readonly isIn: boolean;
  readonly question: AssessedQuestion;
}

/** Of several that were read there it is said which: `, .104 in`. */
const whichSaid = (entry: SheetEvidence, { sheet }: Evidence): string =>
  sheet.some(
    (each) =>
      each.standing &&
      each.id !== entry.id &&
      each.kind === entry.kind &&
      each.scan === undefined &&
      placeOf(each) === placeOf(entry),
  )
    ? `, ${asEntered(entry.readAs)}`
    : '';

/** Piston to valve read in one place, of which the sheet has no word whether lash was in it; a scan says so itself. */
export function lashInGap(entry: SheetEvidence, evidence: Evidence): LashInGap | undefined {
  if (entry.kind !== 'piston-to-valve' || entry.scan !== undefined) return undefined;
  const most = lashOf(entry, evidence);
  if (most <= 0) return undefined;
  const question = asked(
    {
      code: LASH_IN_GAP,
      weight: 'weak',
      ask: `Was the lash taken up when piston to valve of ${placeOf(entry)} was read?`,
      knownBy: LASH_IN_GAP,
      size: `With its lash in it the gap is up to ${inches(most)} less than it reads${whichSaid(entry, evidence)}.`,
      test: 'Say whether the rocker was held down to zero lash, or its lash was in the lift.',
      byLooking: true,
      restsOn: [entry.id],
    },
    {
      about: valveSubject(entry),
      step: 'sheet',
      among: entry.id,
      answers: evidence.answers,
      choices: CHOICES,
    },
  );
  const said = chosenOf(question);
  return { most: said === 'zero' ? 0 : most, isIn: said === 'set', question };
}
