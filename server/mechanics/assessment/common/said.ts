import { formatRatio } from '../../../../shared/quantities/format.ts';
import { toldIn } from '../../../../shared/quantities/spoken-units.ts';
import { type ValveName, valveSaid } from '../../../../shared/schemas/words.ts';
import { byText } from '../../kit/by-text.ts';
import {
  bareFeeler,
  bareInches,
  bareLength,
  feeler,
  inches,
  loadSaid,
  lowOrHigh,
} from '../../kit/say-inches.ts';
import { IN } from '../../kit/si.ts';
import type { Subject } from '../assessment.ts';
import type { Spring, ValvePlace } from '../evidence.ts';

/** The last bits of the arithmetic go before the rounding. */
const clean = (value: number): number => Number(value.toPrecision(12));

export { bareFeeler, bareInches, feeler, inches, loadSaid, lowOrHigh };

/** `.060`; one that was set in millimetres has a place more, so that what is told of a gap follows from both. */
export function bareLimit(si: number): string {
  const thousandths = clean((si / IN) * 1000);
  return Math.abs(thousandths - Math.round(thousandths)) < 1e-6 ? bareInches(si) : bareLength(si, 4);
}

/** The same with its unit. */
export const limitSaid = (si: number): string => `${bareLimit(si)} ${toldIn('in')}`;

/** `.482 in ± .002`: the ± never under a thousandth. */
export const inchesWithin = (si: number, halfWidth: number): string =>
  `${inches(si)} ± ${bareInches(Math.max(halfWidth, 0.001 * IN))}`;

export const ratioSaid = (ratio: number): string => formatRatio(clean(ratio));

/** A ratio as it is stamped or sold: `1.6`. */
export const nominalSaid = (ratio: number): string => String(Number(ratio.toFixed(3)));

/** `3 intake`, `3 intake 2` */
export const placeOf = ({ cylinder, valve }: ValvePlace): string => `${cylinder} ${valveSaid(valve)}`;

export const valveSubject = ({ cylinder, valve }: ValvePlace): Subject => ({ of: 'valve', cylinder, valve });

/** What ids say of their subject; made of what it is, never of an order. */
export function keyOf(about: Subject): string {
  switch (about.of) {
    case 'build':
      return about.of;
    case 'part':
      return about.partId ?? about.of;
    case 'valve':
      return `${about.cylinder}-${about.valve}`;
    case 'side':
      return about.valve;
    case 'set-up':
      return about.setUpId;
    case 'arm':
      return about.armId;
  }
}

/** `.024 in or .026 in`: one of them, where nobody knows which. */
export const listedOr = (items: readonly string[]): string =>
  items.length < 2 ? listed(items) : `${items.slice(0, -1).join(', ')} or ${items.at(-1) ?? ''}`;

/** How the subject is named in a sentence; the build itself needs no name. */
export function subjectSaid(about: Subject): string {
  switch (about.of) {
    case 'build':
      return 'the build';
    case 'part':
      return about.name ?? 'the part';
    case 'side':
      return `${about.others === true ? 'other ' : ''}${about.valve} valves`;
    case 'arm':
      return about.name;
    case 'valve':
    case 'set-up':
      return placeOf(about);
  }
}

export const RATIO_NAMES: Readonly<Record<Spring, string>> = {
  light: 'Light-spring ratio',
  running: 'Running-spring ratio',
  'not-said': 'Ratio, spring not said',
};

const ORDER: readonly ValveName[] = ['intake', 'intake-2', 'intake-3', 'exhaust', 'exhaust-2', 'exhaust-3'];

/** Valves in the engine's own numbering, intake before exhaust. */
export const byPlace = (a: ValvePlace, b: ValvePlace): number =>
  a.cylinder - b.cylinder || ORDER.indexOf(a.valve) - ORDER.indexOf(b.valve);

/** By id, for lists whose order must not hang on the order of entry. */
export const byId = (a: { readonly id: string }, b: { readonly id: string }): number => byText(a.id, b.id);

export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** `a, b and c` */
export function listed(items: readonly string[]): string {
  const last = items.at(-1);
  if (last === undefined) return '';
  return items.length === 1 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

/** `2 gaps`, `a gap`; of none nothing. */
export const counted = (one: string, count: number): string[] =>
  count === 0 ? [] : [count === 1 ? `a ${one}` : `${count} ${one}s`];

/** `1 intake .020 in`, `1 intake 2: .020 in`: the number of a valve does not run into its figure. */
export const withFigure = (place: ValvePlace, figure: string): string =>
  `${placeOf(place)}${/\d$/.test(placeOf(place)) ? ':' : ''} ${figure}`;
