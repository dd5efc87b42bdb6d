import type { AssessedQuestion, Subject } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { keyOf } from '../common/said.ts';
import type { StopEvidence } from '../evidence.ts';
import type { HeldPeak } from './against-card.ts';
import type { TimingAsked } from './questions.ts';
import { againstSaid, degrees, isOut, isWithinWheel, WHEEL, withoutError } from './readings.ts';

/** A peak that is told, with what it stands on. */
export interface ToldPeak {
  readonly peak: HeldPeak;
  readonly stop: StopEvidence | undefined;
  readonly asked: TimingAsked;
  /** All that was read of this lobe. */
  readonly read: readonly HeldPeak[];
}

/** Whether the pointer was shifted before the lobe was read is not said yet, and its error may be in the reading. */
export const isOpen = ({ asked: { pointer, pointerWas }, peak, stop }: ToldPeak): boolean =>
  pointer !== undefined && pointerWas === undefined && !peak.righted && isOut(stop);

/** Said to have been shifted, and nobody has read the stop alike since: that is what proves it. */
export const isNotReadSince = ({ peak, stop }: ToldPeak): boolean => peak.shifted === true && isOut(stop);

/** Which gap to the piston it takes from, on its own side of top dead centre, and which one it gives to. */
function costSaid(early: number): string {
  const other = 'A gap read at another timing no longer holds.';
  return early > 0
    ? `Advance costs intake gap to the piston, least some 10° after top dead centre, and gives the exhaust as much. ${other}`
    : `Retard costs exhaust gap to the piston, least some 10° before top dead centre, and gives the intake as much. ${other}`;
}

const where = ({ side, centreline }: HeldPeak): string =>
  `${degrees(centreline)}° ${side === 'intake' ? 'after' : 'before'} TDC`;

/** What the figure is worth where the pointer may have been left: the other figure, beside it. */
function pointerSaid(told: ToldPeak): string {
  const { peak, stop } = told;
  if (stop === undefined)
    return ' But top dead centre is not proved: nobody has set the pointer against a positive stop.';
  if (isNotReadSince(told))
    return ` But top dead centre is not proved: the stop had the pointer ${degrees(stop.correction)}° out, and no reading of it was kept after it was shifted. Read it again, until it reads ${degrees(stop.trueReading)}° on both sides.`;
  if (!isOpen(told)) return '';
  const other = withoutError(peak, stop);
  return ` But top dead centre is not proved: the stop had the pointer ${degrees(stop.correction)}° out. If it was left so, the peak is ${where(other)}.`;
}

/** The reading that stands earliest against the card, or latest, with what it may be. */
function farthest(
  read: readonly HeldPeak[],
  isFarther: (one: number, other: number) => boolean,
): { readonly peak: HeldPeak; readonly advance: number } | undefined {
  const all = read.flatMap((peak) => peak.mayBe.map((advance) => ({ peak, advance })));
  return all.reduce<(typeof all)[number] | undefined>(
    (far, each) => (far === undefined || isFarther(each.advance, far.advance) ? each : far),
    undefined,
  );
}

/** While nobody knows which reading holds, what the earliest and the latest of them would cost stands, each of its own peak. */
function worstSaid(read: readonly HeldPeak[]): string {
  const isSeveral = new Set(read.map(where)).size > 1;
  const [early, late] = [farthest(read, (a, b) => a > b), farthest(read, (a, b) => a < b)];
  return [
    ...(early === undefined || early.advance <= 0 ? [] : [early]),
    ...(late === undefined || late.advance >= 0 ? [] : [late]),
  ]
    .filter(({ advance }) => !isWithinWheel(advance))
    .map(({ peak, advance }) => {
      const against = againstSaid(advance);
      const so = isSeveral ? `If it peaks ${where(peak)}, it is ${against}` : `If it is ${against}`;
      return ` ${so}: ${costSaid(advance)}`;
    })
    .join('');
}

export const isProved = (told: ToldPeak): boolean =>
  told.stop !== undefined && !isOpen(told) && !isNotReadSince(told);

/** Where it peaks by the wheel alone: no word against the card before top dead centre is proved, only what it may cost. */
function unprovedSaid(told: ToldPeak): string {
  const { peak, stop } = told;
  const all = stop !== undefined && isOpen(told) ? [peak, withoutError(peak, stop)] : [peak];
  const noWord = peak.advance === undefined ? '' : ' No word against the card before that.';
  return `By the wheel the ${peak.side} peaks ${where(peak)}.${pointerSaid(told)}${noWord}${worstSaid(all)}`;
}

/** One cam moves both lobes alike: where they stand apart no advance is told, and nothing of what it costs. */
function apartSaid(found: string, [apart]: readonly AssessedQuestion[], told: ToldPeak): string | undefined {
  if (apart === undefined) return undefined;
  const so =
    apart.answered?.found === undefined
      ? 'No word against the card yet: were both read on one cam, one wheel and one pointer?'
      : apart.answered.found
        ? 'No word against the card before both are read again with the pointer left alone, as was answered.'
        : 'So the card is another cam’s, or one of its centrelines was read out wrong: no word against it.';
  return `${found} ${apart.size ?? ''} ${so}${pointerSaid(told)}`;
}

/** Why no word against the card is told yet; nothing where one may be. */
function doubtSaid(told: ToldPeak): string | undefined {
  const { peak, asked, read } = told;
  const of = ({ about }: { readonly about: Subject }) => keyOf(about) === peak.side;
  const differ = asked.differ.find((each) => of(each) && inDoubt(each));
  if (differ !== undefined)
    return `${differ.size ?? ''} Nobody has said which of them holds: no word against the card yet.${worstSaid(read)}`;
  const found = `By what was read the ${peak.side} peaks ${where(peak)}.`;
  const open = (questions: readonly AssessedQuestion[]) =>
    questions.find((each) => of(each) && inDoubt(each));
  const unusual = open(asked.unusual);
  if (unusual !== undefined)
    return `${found} ${unusual.size ?? ''} No word against the card yet: was each told from the right side of TDC?`;
  const card = open(asked.card);
  if (card !== undefined)
    return `${found} ${card.size ?? ''} No word against the card yet.${worstSaid([peak])}`;
  const pointer = open(asked.pointers);
  if (pointer !== undefined) return `${found} ${pointer.size ?? ''} No word against the card yet.`;
  const duration = open(asked.durations);
  if (duration === undefined) return apartSaid(found, asked.apart, told);
  return `${found} ${duration.size ?? ''} No word against the card yet: was each event told from its right side, and at the lift the card states?`;
}

/** What is said of one lobe: where it peaks, how it stands against its card, and what that costs. */
export function sentenceOf(told: ToldPeak): string {
  const doubt = doubtSaid(told);
  if (doubt !== undefined) return doubt;
  if (!isProved(told)) return unprovedSaid(told);
  const { peak } = told;
  const against = againstSaid(peak.advance);
  const moved = peak.advance !== undefined && !isWithinWheel(peak.advance);
  const said = `The ${peak.side} peaks ${where(peak)}, give or take ${degrees(WHEEL)}°${against === '' ? '' : `: ${against}`}.`;
  return `${said}${moved ? ` ${costSaid(peak.advance)}` : ''}`;
}
