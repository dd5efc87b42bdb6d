import type { Unit } from '../../../shared/quantities/units.ts';
import type { SheetKind } from '../../../shared/schemas/sheet.ts';
import { keysOf, VALVES, type ValveName } from '../../../shared/schemas/words.ts';

/** What a column of a pasted table holds. */
export type Column =
  | { readonly holds: 'cylinder' }
  | { readonly holds: 'valve' }
  | { readonly holds: 'figure'; readonly kind: SheetKind; readonly valve?: ValveName; readonly unit?: Unit };

type HeadingReading =
  | { readonly ok: true; readonly column: Column }
  | { readonly ok: false; readonly detail: string };

/** Words that people head such columns with; a bare "lift" is left out, since it may be of the lobe or the valve. */
const KINDS: readonly (readonly [SheetKind, RegExp])[] = [
  ['lobe-lift', /^(?:lobe(?: lift)?|cam lift|lifter lift)$/],
  ['valve-lift', /^(?:valve lift|lift at the valve)$/],
  ['lash', /^(?:valve )?lash$/],
  ['preload', /^(?:lifter )?preload$/],
  ['coil-bind', /^(?:room to )?coil[ -]?bind$/],
  ['retainer-to-seal', /^(?:retainer to seal|seal|retainer seal)$/],
  ['piston-to-valve', /^(?:piston to valve|valve to piston|ptv)$/],
  ['pushrod-to-head', /^(?:pushrod to head|pushrod|pushrod slot)$/],
  ['slot-to-stud', /^(?:(?:rocker )?slot(?: to stud)?)$/],
  ['rocker-to-retainer', /^(?:rocker to retainer|rocker retainer)$/],
  ['cover', /^(?:(?:to )?(?:the )?(?:valve )?cover|anything to the cover)$/],
];

const ALLOWED =
  'cylinder, valve, lobe lift, valve lift, lash, preload, or the name of a gap, each with its unit if it has one, as in lash [thou]';

const SIDE_WORDS = [
  ['intake', /\b(?:intake|in|int) ?([1-3])?\b/],
  ['exhaust', /\b(?:exhaust|ex|exh) ?([1-3])?\b/],
] as const;

/** The first of a kind has no number: `intake 1` is `intake`. */
const valveOf = (side: 'intake' | 'exhaust', place: string | undefined): ValveName | undefined =>
  keysOf(VALVES).find((name) => name === (place === undefined || place === '1' ? side : `${side}-${place}`));

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[_\-–—/:.,]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Longer than any heading; what is longer is looked at no further. */
const LONGEST = 80;

const UNIT_WORDS = new Map<string, Unit>([
  ['in', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['"', 'in'],
  ['″', 'in'],
  ['thou', 'thou'],
  ['thousandths', 'thou'],
  ['mm', 'mm'],
  ['millimetres', 'mm'],
]);

/** `Lash [thou]`, `Lash, mm`, `Lash mm`; `in` alone at the end is the intake, in brackets or after a comma inches. */
function unitOf(text: string): { unit?: Unit; rest: string } {
  const isClosed = text.endsWith(')') || text.endsWith(']');
  const at = isClosed
    ? Math.max(text.lastIndexOf('('), text.lastIndexOf('['))
    : Math.max(text.lastIndexOf(','), text.lastIndexOf(' '));
  if (at < 0) return { rest: text };
  const word = text
    .slice(at + 1, isClosed ? -1 : undefined)
    .trim()
    .toLowerCase();
  const unit = UNIT_WORDS.get(word);
  const isSide = word === 'in' && !isClosed && text[at] === ' ' && text[at - 1] !== ',';
  return unit === undefined || isSide ? { rest: text } : { rest: text.slice(0, at), unit };
}

/** Reads one heading of a pasted table. */
export function readHeading(text: string): HeadingReading {
  if (text.length > LONGEST)
    return { ok: false, detail: `is longer than ${LONGEST} signs, and no heading of a sheet: ${ALLOWED}` };
  const { unit, rest } = unitOf(text.trim());
  const words = plain(rest);
  if (/^(?:cyl|cylinder|cylinder number|cyl no|no|#)$/.test(words))
    return { ok: true, column: { holds: 'cylinder' } };
  if (/^(?:valve|intake exhaust|in ex|i e|side)$/.test(words))
    return { ok: true, column: { holds: 'valve' } };
  const side = SIDE_WORDS.find(([, pattern]) => pattern.test(words));
  const kindWords = side === undefined ? words : words.replace(side[1], ' ').replace(/\s+/g, ' ').trim();
  const valve = side === undefined ? undefined : valveOf(side[0], side[1].exec(words)?.[1]);
  const kind = KINDS.find(([, pattern]) => pattern.test(kindWords));
  if (kind === undefined) {
    const detail = /\blift\b/.test(words)
      ? 'could be of the lobe or of the valve: head it lobe lift or valve lift'
      : `is no heading of a sheet: ${ALLOWED}`;
    return { ok: false, detail };
  }
  return {
    ok: true,
    column: {
      holds: 'figure',
      kind: kind[0],
      ...(valve === undefined ? {} : { valve }),
      ...(unit === undefined ? {} : { unit }),
    },
  };
}

const INTAKE = /^(?:i|in|int|intake|inlet)$/;
const EXHAUST = /^(?:e|ex|exh|exhaust)$/;

/**
 * `5 intake`, `5I`, `ex 3`: a valve named in one cell. Of two numbers the first is the cylinder, the second which of
 * its kind: `5 intake 2`.
 */
export function readValveName(text: string): { cylinder?: number; valve?: ValveName } {
  const words = plain(text);
  const letters = words.replace(/\d+/g, ' ').trim();
  const side = INTAKE.test(letters) ? 'intake' : EXHAUST.test(letters) ? 'exhaust' : undefined;
  const [cylinder, place] = words.match(/\d+/g) ?? [];
  const valve = side === undefined ? undefined : valveOf(side, place);
  return {
    ...(cylinder === undefined ? {} : { cylinder: Number(cylinder) }),
    ...(valve === undefined ? {} : { valve }),
  };
}

/** `intake 2`: which valve, in a column that names no cylinder. */
export function readValveOnly(text: string): { valve?: ValveName } {
  const [, letters = '', place] = /^([a-z]+) ?([1-3])?$/.exec(plain(text)) ?? [];
  const side = INTAKE.test(letters) ? 'intake' : EXHAUST.test(letters) ? 'exhaust' : undefined;
  const valve = side === undefined ? undefined : valveOf(side, place);
  return valve === undefined ? {} : { valve };
}
