import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { formatQuantity } from '../../../../shared/quantities/format.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance, count } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { IN, MM } from '../../kit/si.ts';
import { ADJUSTER_WORDS, type AdjusterKind, adjusterKind } from '../../lash/adjuster-words.ts';
import { lashSlips, unlikelyLash } from '../../lash/lash-slips.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';
import { asked, inDoubt } from './asked.ts';
import { lashWanted } from './lash-wanted.ts';
import { asItIs, onceEach } from './once.ts';
import { inches, placeOf, valveSubject } from './said.ts';
import { inOrder } from './same-day.ts';

/** The question whether a lash is really what was entered. */
export const LASH_UNLIKELY = 'lash-unlikely';

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'found', label: 'No, it was entered wrong', changes: 'The lash is entered again, or put right.' },
  {
    code: 'not-found',
    label: 'Yes, read again: it is so',
    changes: 'The question is settled, and it counts.',
  },
];

/** So many others have to agree before one is set against them. */
const OTHERS = count('others-agree');
const middle = (values: readonly number[]): number | undefined =>
  values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)];

/** The newest figure of each other valve of its side, at the same heat. */
function othersOf({ lash }: Evidence, line: LashEvidence): number[] {
  const newest = new Map<string, number>();
  const own = lash
    .filter(({ standing, engine }) => standing && engine === line.engine)
    .filter((each) => sideOfValve(each.valve) === sideOfValve(line.valve) && placeOf(each) !== placeOf(line));
  for (const each of inOrder(own))
    if (each.gap.value !== undefined) newest.set(placeOf(each), each.gap.value);
  return [...newest.values()];
}

/** What the card asks for at the heat of the line: its own figure, or by the last sum of the metals that starts from it. */
function cardOf(evidence: Evidence, line: LashEvidence): number | undefined {
  return evidence.card.lashAt === undefined || line.engine === 'not-said'
    ? evidence.card[sideOfValve(line.valve)].lash
    : lashWanted(evidence, line)?.gap;
}

/** What it should be about: the card’s for its heat, else the middle of its side; a gap at another heat is another gap. */
function expectedOf(evidence: Evidence, line: LashEvidence): number | undefined {
  const card = cardOf(evidence, line);
  if (card !== undefined) return card;
  const others = othersOf(evidence, line);
  return others.length < OTHERS ? undefined : middle(others);
}

const typedIn = ({ readAs }: LashEvidence): 'in' | 'mm' => (/\bmm$/.test(readAs) ? 'mm' : 'in');

/** What backs off is the part that sets the gap; a shim does not. */
function whySaid(unlikely: 'wide' | 'tight', kind: AdjusterKind): string {
  if (unlikely === 'tight') return 'No feeler is so thin.';
  const { part, lets } = ADJUSTER_WORDS[kind];
  const heard = lets === 'nothing' ? 'so wide a gap is heard' : `a ${part} that backed off so far is heard`;
  return `So wide a gap is hardly ever set, and ${heard}.`;
}

/** The valve was found so before, or since, at that heat: a slip of the pen does not come to the same twice. */
const isFoundSoTwice = ({ lash }: Evidence, line: LashEvidence): boolean =>
  lash.some(
    (other) =>
      other.standing &&
      other.id !== line.id &&
      other.moment === 'found' &&
      line.moment === 'found' &&
      other.engine === line.engine &&
      placeOf(other) === placeOf(line) &&
      isFromOne(other.gap.value, line.gap.value),
  );

const isFromOne = (one: number | undefined, other: number | undefined): boolean =>
  one !== undefined && other !== undefined && Math.abs(one - other) <= allowance('repeat') + EQUAL;

/** Metric feelers are in hundredths: a figure in thousandths is of no such. */
const isOfMetricFeeler = (si: number): boolean =>
  Math.abs((si / IN) * 100 - Math.round((si / IN) * 100)) < 1e-6;

/**
 * What speaks for the figure as it stands, so that it is asked and counts meanwhile: its lock had moved and it is wide, or
 * it was found so twice where only the digits may be swapped; a wrong unit comes to the same every time.
 */
function isOfAPiece(evidence: Evidence, line: LashEvidence, expected: number | undefined): boolean {
  const { value = 0 } = line.gap;
  const isWider = expected === undefined || value > expected;
  const backedOff = line.nut === 'moved' && isWider && !isOfMetricFeeler(value);
  return backedOff || (unlikelyLash(value) === undefined && isFoundSoTwice(evidence, line));
}

/** A lash that hardly can be, or that a slip of the pen would bring to the others: asked, and not used until then. */
export const lashDoubt = onceEach(
  asItIs,
  (evidence: Evidence, line: LashEvidence): AssessedQuestion | undefined => {
    const { value } = line.gap;
    if (value === undefined || value === 0) return undefined;
    // Whoever typed it knows it in its own unit.
    const typed = (si: number): string =>
      formatQuantity({ value: Number((si / MM).toPrecision(6)), unit: 'mm' });
    const unlikely = unlikelyLash(value);
    const expected = expectedOf(evidence, line);
    const slips = lashSlips(value, typedIn(line), expected);
    if (unlikely === undefined && slips.length === 0) return undefined;
    const why =
      unlikely === undefined
        ? `The card or the other valves of its side have ${inches(expected ?? 0)}.`
        : whySaid(unlikely, adjusterKind(evidence.engine));
    return asked(
      {
        code: LASH_UNLIKELY,
        weight: isOfAPiece(evidence, line, expected) ? 'weak' : 'strong',
        ask: `Is the lash of ${placeOf(line)} really ${typedIn(line) === 'mm' ? asEntered(line.readAs) : inches(value)}?`,
        knownBy: LASH_UNLIKELY,
        size: [
          why,
          ...(slips.length === 0
            ? []
            : [
                `Was ${slips.map(({ said, value: meant }) => (typedIn(line) === 'mm' ? typed(meant) : said)).join(', or ')} meant?`,
              ]),
        ].join(' '),
        test: 'look at what was written down, and whether the feelers are in inches or millimetres.',
        byLooking: true,
        // Kept and put right as a reading of the sheet; the log asks it as well.
        alsoOf: ['adjuster'],
        restsOn: [line.id],
      },
      {
        about: valveSubject(line),
        step: 'sheet',
        among: line.id,
        answers: evidence.answers,
        choices: CHOICES,
      },
    );
  },
);

/** Neither told as the lash of the valve nor worked with. */
export function isLashDoubted(evidence: Evidence, line: LashEvidence): boolean {
  const doubt = lashDoubt(evidence, line);
  return doubt !== undefined && inDoubt(doubt);
}
