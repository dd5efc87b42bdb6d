import { UNITS } from '../../../shared/quantities/units.ts';
import { lashGrowths } from '../../mechanics/lash/growth.ts';
import { grewAgain, lashQuestions } from '../../mechanics/lash/lash-questions.ts';
import type { LashGrowth, LashLine, LashQuestion } from '../../mechanics/lash/types.ts';
import type { LoggedLash } from '../../records/lash-log/lash-log.ts';
import type { Limit } from '../../records/limits/known-limits.ts';
import { type BuildRecord, limitOf } from '../../records/whole-build/build-record.ts';

export interface LashLog {
  /** Oldest first; replaced and struck ones left out. */
  readonly lines: readonly LoggedLash[];
  readonly growths: readonly LashGrowth[];
  readonly questions: readonly LashQuestion[];
  /** Grown again after they were set again. */
  readonly again: readonly LashGrowth[];
  readonly limit: Limit;
}

function asLine({ reading, engine, moment, nut }: LoggedLash): LashLine {
  const { value, low, high, unit } = reading.reading;
  const si = (length: number | undefined) => (length === undefined ? undefined : length * UNITS[unit].toSi);
  return {
    cylinder: reading.cylinder,
    valve: reading.valve,
    gap: { low: si(value ?? low), high: si(value ?? high) },
    moment,
    engine,
    nut,
  };
}

/** The lash log of a build with what it raises. */
export function lashLogOf(record: BuildRecord): LashLog {
  const lines = record.lashLines.filter(
    ({ reading }) => reading.replacedBy === undefined && !reading.struck && reading.arms === 'these',
  );
  const limit = limitOf(record, 'lash-growth');
  const most = limit.value.value * UNITS[limit.value.unit].toSi;
  const growths = lashGrowths(lines.map(asLine), most);
  return {
    lines,
    growths,
    questions: lashQuestions(growths, most),
    again: grewAgain(growths, most),
    limit,
  };
}
