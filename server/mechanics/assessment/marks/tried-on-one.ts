import { asItIs } from '../../tip-mark/advice-short.ts';
import { isLike } from '../../tip-mark/called-wide.ts';
import { ONE_LENGTH } from '../../tip-mark/next-length.ts';
import { AS_NARROW } from '../../tip-mark/tried.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import type { MarkedValveDetail } from './detail.ts';
import type { MarkedValve } from './marked-valve.ts';
import { markOf } from './order.ts';
import { wantsMark } from './said.ts';

/*
 * Valves that show one mark at one setting: what is tried on one of them goes for all, and nobody tries three lengths on
 * sixteen valves. Common practice, no published source.
 */

const isOne = (a: number | undefined, b: number | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && Math.abs(a - b) < ONE_LENGTH);

/** Made at one setting, in one way, as wide and with its middle in one place. */
function isAlike({ arms }: Evidence, one: TipMarkEvidence, other: TipMarkEvidence): boolean {
  const [a, b] = [markOf(one, arms), markOf(other, arms)];
  return (
    isLike(a, b) &&
    isOne(a.pushrod, b.pushrod) &&
    isOne(a.shims, b.shims) &&
    a.side === b.side &&
    Math.abs((a.off ?? 0) - (b.off ?? 0)) <= AS_NARROW &&
    Math.abs(a.width - b.width) <= AS_NARROW
  );
}

const judgedOf = ({ marks, judgedId }: MarkedValveDetail): TipMarkEvidence | undefined =>
  marks.find(({ id }) => id === judgedId);

/** The valve where it is tried: of those with such a mark the one with the most marks, the first of them. */
function triedOn(
  evidence: Evidence,
  valves: readonly MarkedValve[],
  { valve: own }: MarkedValve,
): MarkedValve | undefined {
  const judged = judgedOf(own);
  if (judged === undefined) return undefined;
  const alike = valves.filter(({ valve }) => valve.marks.some((mark) => isAlike(evidence, judged, mark)));
  return alike.toSorted((a, b) => b.valve.marks.length - a.valve.marks.length)[0];
}

/** What follows for a valve that waits for another: nothing is asked of it meanwhile. */
function waiting(each: MarkedValve, lead: MarkedValve): MarkedValve {
  const place = placeOf(lead.valve);
  const said = `As ${place} at that setting: it is tried there first, and goes for this one too.`;
  const left = each.questions.filter(({ code }) => code !== 'mark-wide');
  const { advice: _advice, ...valve } = each.valve;
  return {
    ...each,
    questions: left,
    valve: { ...valve, first: asItIs(said), questionIds: left.map(({ id }) => id) },
  };
}

/** The valves with what is to be tried asked of one alone; a valve of which it was answered keeps its question. */
export const triedOnOne = (valves: readonly MarkedValve[], evidence: Evidence): MarkedValve[] =>
  valves.map((each) => {
    const { valve, questions } = each;
    const open = questions.filter(({ answered }) => answered === undefined);
    const isAsked = open.length === 1 && open[0]?.code === 'mark-wide' && open.length === questions.length;
    // A narrower one beside it calls it wide, and then it is its own case.
    if (!isAsked || valve.alone || valve.marks.length > 1 || wantsMark(valve) === undefined) return each;
    const lead = triedOn(evidence, valves, each);
    return lead === undefined || lead === each ? each : waiting(each, lead);
  });
