import table from '../../../seeds/threads.json' with { type: 'json' };
import { formatNumber } from '../../../shared/quantities/format.ts';
import { threadsPerInch } from '../../../shared/quantities/threads-per-inch.ts';
import { IN, MM } from '../kit/si.ts';
import { type DesignationReading, normalised, readDesignation } from './read-designation.ts';
import type { Thread } from './thread-table.ts';

/** The thread of a nut or screw that is turned: of it the pitch alone counts. */
export type AdjusterThread = Pick<Thread, 'designation' | 'pitch'> & {
  /** `7/16`, `M6`; left out where only its pitch was said. */
  readonly size?: string;
};

const { metric, unified } = table.screws;
const METRIC = /^m(\d+(?:\.\d+)?)[-x](\d*\.?\d+)(?:mm)?$/;
const UNIFIED = /^(?:#|no\.?)?(\d+(?:\/\d+)?)[-x](\d+)(?:tpi)?(?:-?un[a-z]{1,3})?$/;
const MILLIMETRES = /^(\d*\.?\d+)mm(?:pitch)?$/;

const PITCHES = [
  ...metric.flatMap(({ pitches }) => pitches.map((pitch) => pitch * MM)),
  ...unified.flatMap(({ counts }) => counts.map((count) => IN / count)),
];
const [FINEST, COARSEST] = [Math.min(...PITCHES), Math.max(...PITCHES)];

function metricOf(text: string): AdjusterThread | undefined {
  const [, size, pitch] = METRIC.exec(text) ?? [];
  const row = metric.find((each) => each.size === Number(size));
  const own = row?.pitches.find((each) => each === Number(pitch));
  return row === undefined || own === undefined
    ? undefined
    : { designation: `M${row.size}×${own}`, size: `M${row.size}`, pitch: own * MM };
}

function unifiedOf(text: string): AdjusterThread | undefined {
  const [, size, count] = UNIFIED.exec(text) ?? [];
  const row = unified.find((each) => each.size === size);
  const own = row?.counts.find((each) => each === Number(count));
  return row === undefined || own === undefined
    ? undefined
    : { designation: `${row.size}-${own}`, size: row.size, pitch: IN / own };
}

/** A pitch by itself, no finer and no coarser than the threads of the table. */
function pitchOf(raw: string, text: string): AdjusterThread | undefined {
  const millimetres = MILLIMETRES.exec(text)?.[1];
  const count = threadsPerInch(raw.trim());
  const pitch =
    millimetres === undefined ? (count === undefined ? undefined : IN / count) : Number(millimetres) * MM;
  if (pitch === undefined || pitch < FINEST * (1 - 1e-9) || pitch > COARSEST * (1 + 1e-9)) return undefined;
  const designation =
    count === undefined ? `${formatNumber(pitch / MM, 2)} mm pitch` : `${formatNumber(count, 0)} to the inch`;
  return { designation, pitch };
}

/**
 * The thread of an adjuster as people write it: one of the table of threads, a finer screw by size and pitch, or the pitch
 * by itself: `7/16-20`, `M6x0.75`, `10-32`, `0.75 mm`, `32 tpi`.
 */
export function readAdjusterThread(text: string): DesignationReading<AdjusterThread> {
  const known = readDesignation(text);
  if (known.ok) return known;
  const plain = normalised(text);
  const thread = metricOf(plain) ?? unifiedOf(plain) ?? pitchOf(text, plain);
  return thread === undefined
    ? { ok: false, detail: `${known.detail}; or the pitch alone, such as 0.75 mm or 32 tpi` }
    : { ok: true, thread };
}
