import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { mostLash } from '../../lash/usual-lash.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { toRead, toSay } from '../common/lack.ts';
import { onceEach } from '../common/once.ts';
import { byPlace, inches, placeOf, valveSubject } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import { valvesSaid } from '../common/valves-said.ts';
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

const TEST = 'Say whether the rocker was held down to zero lash, or its lash was in the lift.';

const isPistonGap = ({ kind, scan }: SheetEvidence): boolean =>
  kind === 'piston-to-valve' && scan === undefined;

/** Of a gap that is not the only one of its valve, its figure says which it is. */
function whichSaid(entry: SheetEvidence, { sheet }: Evidence): string {
  const here = sheet.filter((each) => each.standing && isPistonGap(each) && placeOf(each) === placeOf(entry));
  return here.length > 1 ? `, ${asEntered(entry.readAs)},` : '';
}

/** What is asked of one reading by itself. */
function askedOfOne(entry: SheetEvidence, evidence: Evidence, most: number): AssessedQuestion {
  return asked(
    {
      code: LASH_IN_GAP,
      weight: 'weak',
      ask: `Was the lash taken up when piston to valve of ${placeOf(entry)}${whichSaid(entry, evidence)} was read?`,
      knownBy: LASH_IN_GAP,
      size: `With its lash in it the gap is up to ${inches(most)} less than it reads.`,
      test: TEST,
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
}

/** Not all of them alike: each is asked about by itself. */
const NOT_ALIKE = 'not-alike';

const CHOICES_OF_ALL: AssessedQuestion['answers'] = [
  { code: 'zero', label: 'All at zero lash', changes: 'The gaps count as they were read.' },
  {
    code: 'set',
    label: 'With their lash in them',
    changes: 'With the lash taken up each gap is less by that much.',
  },
  {
    code: NOT_ALIKE,
    label: 'Not all of them alike',
    changes: 'Each of them is asked about by itself.',
  },
];

const enteredAt = ({ entered, line }: SheetEvidence): number => entered ?? line;

/** The readings that were entered together, in which lash may be: they were read in one way. */
const enteredWith = onceEach(
  enteredAt,
  (evidence: Evidence, entry: SheetEvidence): readonly SheetEvidence[] =>
    evidence.sheet
      .filter((each) => each.standing && isPistonGap(each) && enteredAt(each) === enteredAt(entry))
      .filter((each) => lashOf(each, evidence) > 0)
      .toSorted(byPlace),
);

/** What is asked once of all that were entered together. */
function askedOfAll(own: readonly SheetEvidence[], evidence: Evidence): AssessedQuestion {
  const most = Math.max(...own.map((each) => lashOf(each, evidence)));
  return asked(
    {
      code: LASH_IN_GAP,
      weight: 'weak',
      ask: `Was the lash taken up when piston to valve of ${valvesSaid(own)} was read?`,
      knownBy: LASH_IN_GAP,
      size: `With its lash in it each gap is up to ${inches(most)} less than it reads.`,
      test: 'Say whether the rockers were held down to zero lash, or their lash was in the lift.',
      byLooking: true,
      restsOn: own.map(({ id }) => id),
    },
    {
      about: { of: 'build' },
      step: 'sheet',
      among: `entered-${own.map(enteredAt)[0] ?? 0}`,
      answers: evidence.answers,
      choices: CHOICES_OF_ALL,
    },
  );
}

/**
 * The question that a reading is asked: once for all that were entered together, and by itself where it is the only one,
 * where it was answered so, or where they were not all read alike.
 */
function questionOf(entry: SheetEvidence, evidence: Evidence, most: number): AssessedQuestion {
  const one = askedOfOne(entry, evidence, most);
  const together = enteredWith(evidence, entry);
  if (together.length < 2 || one.answered !== undefined) return one;
  const all = askedOfAll(together, evidence);
  return chosenOf(all) === NOT_ALIKE ? one : all;
}

/** Piston to valve read in one place, of which the sheet has no word whether lash was in it; a scan says so itself. */
export function lashInGap(entry: SheetEvidence, evidence: Evidence): LashInGap | undefined {
  if (!isPistonGap(entry)) return undefined;
  const most = lashOf(entry, evidence);
  if (most <= 0) return undefined;
  const question = questionOf(entry, evidence, most);
  const said = chosenOf(question);
  return { most: said === 'zero' ? 0 : most, isIn: said === 'set', question };
}
