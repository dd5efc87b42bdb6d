import table from '../../../seeds/threads.json' with { type: 'json' };
import { IN, MM } from '../kit/si.ts';

/** An external thread, lengths in SI. */
export interface Thread {
  /** As the trade writes it: `7/16-20 UNF`, `M8×1.25`. */
  readonly designation: string;
  /** `7/16`, `M8`. */
  readonly size: string;
  readonly system: 'unified' | 'metric';
  /** What is after the size: threads to the inch, or the pitch in millimetres. */
  readonly count: number;
  /** `UNC` or `UNF`; metric threads have none. */
  readonly series?: string;
  readonly nominal: number;
  readonly pitch: number;
  readonly majorMin: number;
  readonly majorMax: number;
  /** Class of fit: `2A`, `6g`. */
  readonly fitClass: string;
}

const unified = table.unified.threads.map(
  (row): Thread => ({
    designation: `${row.size}-${row.threadsPerInch} ${row.series}`,
    size: row.size,
    system: 'unified',
    count: row.threadsPerInch,
    series: row.series,
    nominal: row.nominal * IN,
    pitch: IN / row.threadsPerInch,
    majorMin: row.majorMin * IN,
    majorMax: row.majorMax * IN,
    fitClass: table.unified.class,
  }),
);

const metric = table.metric.threads.map(
  (row): Thread => ({
    designation: `${row.size}×${row.pitch}`,
    size: row.size,
    system: 'metric',
    count: row.pitch,
    nominal: row.nominal * MM,
    pitch: row.pitch * MM,
    majorMin: row.majorMin * MM,
    majorMax: row.majorMax * MM,
    fitClass: table.metric.class,
  }),
);

/** Every thread of the table, unified first, by size. */
export const THREADS: readonly Thread[] = [...unified, ...metric];

/** Designations as a sentence lists them. */
export const listed = (threads: readonly Thread[]): string =>
  threads.map((thread) => thread.designation).join(', ');
