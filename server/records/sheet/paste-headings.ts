import { isUnit, type Unit } from '../../../shared/quantities/units.ts';
import type { SheetKind } from '../../../shared/schemas/sheet.ts';
import type { Side } from '../../mechanics/assessment/evidence.ts';

/** What a column of a pasted table holds. */
export type Column =
  | { readonly holds: 'cylinder' }
  | { readonly holds: 'valve' }
  | { readonly holds: 'figure'; readonly kind: SheetKind; readonly side?: Side; readonly unit?: Unit };

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

const SIDE_WORDS: readonly (readonly [Side, RegExp])[] = [
  ['intake', /\b(?:intake|in|int)\b/],
  ['exhaust', /\b(?:exhaust|ex|exh)\b/],
];

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[_\-–—/:.,]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** A unit in brackets or after a comma at the end of a heading. */
function unitOf(text: string): { unit?: Unit; rest: string } {
  const found = /^(.*?)[\s,]*[([]\s*(in|inch|inches|thou|mm)\s*[)\]]\s*$|^(.*?),\s*(in|thou|mm)\s*$/i.exec(
    text,
  );
  const word = (found?.[2] ?? found?.[4])?.toLowerCase();
  if (found === null || word === undefined) return { rest: text };
  const unit = word.startsWith('inch') ? 'in' : word;
  return { rest: found[1] ?? found[3] ?? '', ...(isUnit(unit) ? { unit } : {}) };
}

/** Reads one heading of a pasted table. */
export function readHeading(text: string): HeadingReading {
  const { unit, rest } = unitOf(text.trim());
  const words = plain(rest);
  if (/^(?:cyl|cylinder|cylinder number|cyl no|no|#)$/.test(words))
    return { ok: true, column: { holds: 'cylinder' } };
  if (/^(?:valve|intake exhaust|in ex|i e|side)$/.test(words))
    return { ok: true, column: { holds: 'valve' } };
  const side = SIDE_WORDS.find(([, pattern]) => pattern.test(words));
  const kindWords = side === undefined ? words : words.replace(side[1], ' ').replace(/\s+/g, ' ').trim();
  const kind = KINDS.find(([, pattern]) => pattern.test(kindWords));
  if (kind === undefined) {
    const detail = /\blift\b/.test(words)
      ? 'could be of the lobe or of the valve: head it lobe lift or valve lift'
      : 'is no heading of a sheet: cylinder, valve, lobe lift, valve lift, lash, preload, or the name of a gap';
    return { ok: false, detail };
  }
  return {
    ok: true,
    column: {
      holds: 'figure',
      kind: kind[0],
      ...(side === undefined ? {} : { side: side[0] }),
      ...(unit === undefined ? {} : { unit }),
    },
  };
}

/** `5 intake`, `5I`, `ex 3`: a valve named in one cell. */
export function readValveName(text: string): { cylinder?: number; side?: Side } {
  const words = plain(text);
  const cylinder = /\d+/.exec(words)?.[0];
  const letters = words.replace(/\d+/g, ' ').trim();
  const side = /^(?:i|in|int|intake|inlet)$/.test(letters)
    ? 'intake'
    : /^(?:e|ex|exh|exhaust)$/.test(letters)
      ? 'exhaust'
      : undefined;
  return {
    ...(cylinder === undefined ? {} : { cylinder: Number(cylinder) }),
    ...(side === undefined ? {} : { side }),
  };
}
