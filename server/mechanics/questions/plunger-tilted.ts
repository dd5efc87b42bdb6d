import { computation as cosineError } from '../computations/cosine-error.ts';
import { between } from './compare.ts';
import { idsOf, lobeInUse, valveLift } from './lifts.ts';
import { COMMON_NOMINALS, type Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch, nominalText, ratioText } from './words.ts';

const TEST = 'Set the plunger parallel to the stem, seen from the front and the side, and read again.';

interface Lean {
  readonly degrees: number;
  readonly ratio: number;
  readonly nominal: number;
}

/** Sliding on a flat face it reads long, held in one spot it reads short. */
function canReadSo(input: QuestionInput, over: boolean): boolean {
  if (over) return input.restsOn === 'retainer-flat' || input.restsOn === 'not-said';
  // Flex and lash take lift off as well, and more often.
  return input.restsOn !== 'retainer-flat' && input.spring === 'light' && input.lash === 'zero';
}

function leanOf(input: QuestionInput): Lean | undefined {
  const lift = valveLift(input);
  const lobe = lobeInUse(input);
  const nominal = input.nominalRatio;
  if (lift === undefined || lobe === undefined || nominal === undefined) return undefined;
  const ratio = lift / lobe;
  const cosine = Math.min(ratio, nominal) / Math.max(ratio, nominal);
  if (!canReadSo(input, ratio > nominal)) return undefined;
  return { degrees: (Math.acos(cosine) * 180) / Math.PI, ratio, nominal };
}

/** Row 25: the reading lands on another nominal, so it looks like a plain answer. */
function sizeText({ degrees, ratio, nominal }: Lean, t: Tolerances): string {
  const lean = `A lean of about ${degrees.toFixed(0)} deg makes ${ratioText(ratio)} of ${nominalText(nominal)}`;
  const other = COMMON_NOMINALS.find(
    (each) => each !== nominal && Math.abs(ratio / each - 1) <= t.nominalNear,
  );
  return other === undefined ? `${lean}.` : `${lean}; so does a ${nominalText(other)} read upright.`;
}

/** As far as it was said to lean: what the reading would be upright, by how the tip touches. */
function toldText({ lean, restsOn, ...input }: QuestionInput): string | undefined {
  const reading = valveLift({ ...input, restsOn });
  if (lean === undefined || lean <= 0 || reading === undefined) return undefined;
  const upright = (contact: 'flat-face' | 'carried-point') =>
    inch(cosineError.compute({ reading, tilt: lean, contact }).trueMotion);
  const start = `${((lean * 180) / Math.PI).toFixed(0)} deg makes ${inch(reading)} of`;
  const flat = `${upright('flat-face')} where the tip slides on a flat face`;
  const held = `${upright('carried-point')} where it is held in one spot`;
  if (restsOn === 'retainer-flat') return `${start} ${flat}.`;
  return restsOn === 'not-said' ? `${start} ${flat}, and of ${held}.` : `${start} ${held}.`;
}

/** What a lean would explain of a reading whose plunger nobody spoke of; undefined where it would explain nothing. */
export function leanThatFits(input: QuestionInput, t: Tolerances): string | undefined {
  const lean = leanOf(input);
  return lean !== undefined && between(lean.degrees, t.tiltFromNotSaid, t.tiltMost)
    ? sizeText(lean, t)
    : undefined;
}

/** Rows 8 and 25: the plunger leans. */
export function plungerTilted(input: QuestionInput, tolerances: Tolerances): Question[] {
  // Not said, it is asked as that, in one question.
  if (input.alignment !== 'leaning' || input.valvePasses.length === 0) return [];
  const lean = leanOf(input);
  const fits = lean !== undefined && between(lean.degrees, tolerances.tiltFrom, tolerances.tiltMost);
  return [
    {
      code: 'plunger-tilted',
      weight: fits ? 'strong' : 'weak',
      ask: 'How far does the plunger lean?',
      size:
        toldText(input) ??
        (fits ? sizeText(lean, tolerances) : 'Ten deg is 1.5 % of the lift, fifteen 3.5 %.'),
      test: TEST,
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
