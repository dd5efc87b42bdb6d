import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import type {
  Action,
  Cause,
  ExplainInput,
  ExplainReading,
  ExplainResult,
} from '../../../server/mechanics/explain-readings/types.ts';
import type { Chance } from './random.ts';
import { type Asked, type TrueCall, takeReading } from './simulated-call.ts';

/** From this chance on a mistake is taken as made, and what it spoils is struck out. */
const STRIKE_FROM = 0.8;
const READ_BACK_FINDS = 0.93;
const READ_BACK_FINDS_ELSE = 0.01;
export const MOST_STEPS = 20;

/** Explanations as the inference has them, or as the assessment shows them. */
interface Explained {
  readonly explanations: readonly {
    readonly causes: readonly Cause[];
    readonly probability: number;
    readonly entry?: { readonly of: 'card' | 'reading'; readonly index?: number | undefined } | undefined;
  }[];
}

export interface Followed {
  readonly result: ExplainResult;
  readonly steps: number;
  readonly minutes: number;
  readonly final: ExplainInput;
}

/** How the next valve reading is taken if nothing changes. */
function asBefore(readings: readonly ExplainReading[], call: TrueCall): Asked {
  const last = readings.findLast((reading) => reading.of === 'valve-lift');
  if (last === undefined) return { of: 'valve-lift', spring: call.spring, lifter: call.lifter };
  const { value: _, atLobeLift: __, setUp, pass, ...kept } = last;
  return { ...kept, setUp, pass: pass + 1 };
}

const CHANGES: Readonly<Partial<Record<Action, Partial<Asked>>>> = {
  'one-more-pass': { counted: true },
  'lash-to-zero': { lashSet: true },
  'align-plunger': { aligned: true },
  'valve-lift-at-.200': { atLobeLift: 0.2 },
};

/** How the reading that is asked for is taken. */
export function askFor(action: Action, readings: readonly ExplainReading[], call: TrueCall): Asked {
  const before = asBefore(readings, call);
  const setUp = Math.max(0, ...readings.map((reading) => reading.setUp)) + 1;
  if (action === 'lobe-at-lifter') return { of: 'lobe-lift' };
  if (action === 'light-spring-solid-lifter') return { ...before, spring: 'light', lifter: 'solid', setUp };
  if (action === 'rocker-on-another-valve') return { ...before, otherValve: true, setUp };
  return { ...before, ...CHANGES[action] };
}

/** Mistakes that show when the entries are read back. */
export const HEARD: readonly Cause[] = ['wrong-card-row', 'wrong-valve', 'valve-lift-as-lobe'];

/** Whether reading the entries back finds one that was wrong. */
export function readBackFinds(chance: Chance, call: TrueCall): boolean {
  const wrong = call.cardSlipped || HEARD.some((cause) => call.mistakes.has(cause));
  return chance.happens(wrong ? READ_BACK_FINDS : READ_BACK_FINDS_ELSE);
}

/** Does the reading stand free of the mistake? */
function isFree(cause: Cause, reading: ExplainReading, index: number, slipAt: number | undefined): boolean {
  switch (cause) {
    case 'turn-too-many':
    case 'turn-too-few':
    case 'hand-read-backwards':
      return reading.counted ?? false;
    case 'lash-left-in':
      return reading.lashSet ?? false;
    case 'plunger-tilted':
      return reading.aligned ?? false;
    case 'zero-moved':
    case 'unlisted-fault':
      return reading.setUp > 0;
    case 'slip':
      return index !== slipAt;
    default:
      return true;
  }
}

function chanceOf(result: Explained, cause: Cause): number {
  return result.explanations
    .filter((one) => one.causes.includes(cause))
    .reduce((sum, one) => sum + one.probability, 0);
}

const ABOUT_THE_CARD: readonly Cause[] = ['wrong-card-row', 'valve-lift-as-lobe', 'card-not-this-lobe'];

function withoutCard(input: ExplainInput): ExplainInput {
  const { cardLobeLift: _, otherLobeLift: __, ...rest } = input;
  return rest;
}

/** Strikes out what a mistake held for certain enough spoils, once something free of it stands. */
export function strike(input: ExplainInput, result: Explained): ExplainInput {
  const held = result.explanations[0];
  for (const cause of new Set(result.explanations.flatMap((one) => one.causes))) {
    if (chanceOf(result, cause) < STRIKE_FROM) continue;
    const entry = result.explanations.find((one) => one.causes.includes(cause))?.entry;
    const aboutCard = ABOUT_THE_CARD.includes(cause) || (cause === 'slip' && entry?.of === 'card');
    if (aboutCard && input.cardLobeLift !== undefined && input.readings.some((r) => r.of === 'lobe-lift')) {
      return withoutCard(input);
    }
    const slipAt = entry?.of === 'reading' ? entry.index : undefined;
    const kept = input.readings.filter((r, i) => r.of === 'lobe-lift' || isFree(cause, r, i, slipAt));
    const stands = kept.some((r) => r.of === 'valve-lift' && r.atLobeLift === undefined);
    if (stands && kept.length < input.readings.length && held !== undefined)
      return { ...input, readings: kept };
  }
  return input;
}

/** Follows one call: takes each next reading offered till there is none. */
export function follow(chance: Chance, call: TrueCall): Followed {
  const first = takeReading(chance, call, { of: 'valve-lift', spring: call.spring, lifter: call.lifter }, []);
  const taken: ExplainReading[] = [first];
  let input: ExplainInput = { ...call.said, readings: [first] };
  let result = explainReadings(input);
  let steps = 0;
  let minutes = 0;
  while (result.nextReading !== undefined && steps < MOST_STEPS) {
    const { action } = result.nextReading;
    steps += 1;
    minutes += result.nextReading.minutes;
    if (action === 'read-back') {
      const found = readBackFinds(chance, call);
      input = { ...input, answers: [...(input.answers ?? []), { ask: 'read-back', found }] };
    } else {
      const reading = takeReading(chance, call, askFor(action, taken, call), taken);
      taken.push(reading);
      input = { ...input, readings: [...input.readings, reading] };
    }
    result = explainReadings(input);
    const struck = strike(input, result);
    if (struck !== input) {
      input = struck;
      result = explainReadings(input);
    }
  }
  return { result, steps, minutes, final: input };
}
