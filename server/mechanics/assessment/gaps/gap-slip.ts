import { defined } from '../../../../shared/defined.ts';
import { GAP_KINDS, SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance, allowanceSource } from '../../kit/allowances.ts';
import { type GapSlip, gapSlip } from '../../questions/gap-slips.ts';
import { medianOf } from '../../statistics/median.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { answersOf } from '../common/answers-of.ts';
import { asked, inDoubt } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import { type Lack, toAnswer } from '../common/lack.ts';
import { onceEach } from '../common/once.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, GapName, SheetEvidence } from '../evidence.ts';
import { type GapReading, READ_AGAIN } from './gap-found-off.ts';

export const isOfGap = (entry: SheetEvidence): entry is GapReading =>
  GAP_KINDS.some((kind) => kind === entry.kind);

/** One figure of it: of two gauges what lies between them. */
function figureOf({ reading: { value, low, high } }: GapReading): number | undefined {
  if (value !== undefined) return value;
  return low !== undefined && high !== undefined ? (low + high) / 2 : (low ?? high);
}

/** Read with the same arms, on the same spring and lifter. */
const stateOf = ({ kind, valve, otherArms, arms, spring, lifter }: GapReading): string =>
  [kind, sideOfValve(valve), otherArms ?? arms, spring, lifter].join(' ');

/** One figure for each of the other valves: of several readings of one gap the least, which stands. */
function siblingsOf(entry: GapReading, { sheet }: Evidence): number[] {
  const others = sheet
    .filter((each) => each.standing && each.scan === undefined && each.tool !== 'guess')
    .filter(isOfGap)
    .filter((each) => stateOf(each) === stateOf(entry) && placeOf(each) !== placeOf(entry));
  return [...new Set(others.map(placeOf))].flatMap((place) => {
    const own = others.filter((each) => placeOf(each) === place).flatMap((each) => figureOf(each) ?? []);
    return own.length === 0 ? [] : [Math.min(...own)];
  });
}

/** What there is with the valve shut: at full lift there is less. */
function mostOf(kind: GapName, { springs }: Evidence): number | undefined {
  const { installedHeight, solidHeight, retainerToSeal } = springs;
  if (kind === 'retainer-to-seal') return retainerToSeal;
  if (kind !== 'coil-bind' || installedHeight === undefined || solidHeight === undefined) return undefined;
  return installedHeight > solidHeight ? installedHeight - solidHeight : undefined;
}

/** Some covers stand far off. */
const usualOf = (kind: GapName): number | undefined =>
  kind === 'cover' ? undefined : allowance('gap-usual-most');

/** `.095 in`, `.095 to .110 in` */
function rangeSaid(values: readonly number[]): string {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return inches(low) === inches(high) ? inches(low) : gapSaid({ low, high });
}

/** What speaks for the slip, behind what the gap becomes. */
function whySaid({ from }: GapSlip, siblings: readonly number[], most: number | undefined): string {
  if (from === 'siblings')
    return siblings.length === 1
      ? `the other reads ${rangeSaid(siblings)}`
      : `the others read ${rangeSaid(siblings)}`;
  return from === 'most' && most !== undefined
    ? `with the valve shut there is ${inches(most)}, and at full lift less`
    : `such a gap is hardly ever more than ${inches(allowance('gap-usual-most'))} (${allowanceSource('gap-usual-most')})`;
}

/** A gap with its point one place off, or two digits the other way round, as those of lifts are asked about. */
function slipOf(evidence: Evidence, entry: GapReading): AssessedQuestion | undefined {
  const value = figureOf(entry);
  if (value === undefined || !entry.standing || entry.scan !== undefined || entry.tool === 'guess')
    return undefined;
  const siblings = siblingsOf(entry, evidence);
  const most = mostOf(entry.kind, evidence);
  const slip = gapSlip({
    value,
    inMillimetres: entry.readAs.endsWith(' mm'),
    isFigure: entry.reading.value !== undefined,
    ...defined({ most, usual: usualOf(entry.kind) }),
    ...(siblings.length === 0 ? {} : { siblings: medianOf(siblings) }),
  });
  if (slip === undefined) return undefined;
  const gap = `${SHEET_KINDS[entry.kind].toLowerCase()}, ${inches(value)},`;
  const why = whySaid(slip, siblings, most);
  return asked(
    {
      code: slip.code,
      weight: slip.weight,
      knownBy: `${slip.code} of ${entry.kind}`,
      restsOn: [entry.id],
      test: `Read ${SHEET_KINDS[entry.kind].toLowerCase()}, ${inches(value)}, out again digit by digit, with its unit.`,
      ...(slip.code === 'decimal-slip'
        ? {
            ask: `Could the point be misplaced in the ${gap} on ${placeOf(entry)}?`,
            size: `Moved one place it makes ${inches(slip.becomes)}; ${why}.`,
          }
        : {
            ask: `Could two digits of the ${gap} on ${placeOf(entry)} be the wrong way round?`,
            size: `The other way round it is ${inches(slip.becomes)}; ${why}.`,
          }),
      alsoOf: ['consequences'],
    },
    {
      about: valveSubject(entry),
      step: 'sheet',
      among: entry.id,
      answers: evidence.answers,
      choices: answersOf(slip.code),
    },
  );
}

/** What is asked of one reading of a gap, whose figure is unlike those of its side or more than can be. */
export const slipOfGap = onceEach((entry: GapReading) => entry.id, slipOf);

/** What such a gap waits for before it may have a word. */
export function slipNeeds(question: AssessedQuestion | undefined): Lack[] {
  if (question === undefined || !inDoubt(question)) return [];
  return question.answered?.found === true
    ? [READ_AGAIN]
    : [toAnswer(question, `an answer to this: ${question.ask}`)];
}
