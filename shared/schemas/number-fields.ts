import { z } from 'zod';
import { defined } from '../defined.ts';
import { fieldInfo } from './field-info.ts';
import { type NumberRange, readBare } from './read-bare.ts';
import { LONGEST, refuse, tooMany } from './refuse.ts';

function numberJsonSchema(range: NumberRange) {
  return {
    type: range.whole ? ('integer' as const) : ('number' as const),
    ...defined({
      minimum: range.least,
      maximum: range.most,
      exclusiveMinimum: range.above,
      exclusiveMaximum: range.below,
    }),
  };
}

/** A bare number. */
export function bare(description: string, range: NumberRange = {}) {
  const schema = z
    .unknown()
    .transform((raw, ctx): number => {
      const read = readBare(raw, range);
      return read.ok ? read.value : refuse(ctx, read.code, read.detail);
    })
    .meta({ ...numberJsonSchema(range), description });
  fieldInfo.add(schema, { control: 'number' });
  return schema;
}

/** A list of bare numbers. */
export function bareList(
  description: string,
  range: NumberRange & { fewest?: number; longest?: number } = {},
) {
  const most = range.longest ?? LONGEST;
  const schema = z
    .unknown()
    .transform((raw, ctx): number[] => {
      if (raw === undefined) return refuse(ctx, 'required', 'is missing: a list of bare numbers');
      if (!Array.isArray(raw)) return refuse(ctx, 'not-allowed', 'must be a list of bare numbers');
      if (tooMany(ctx, raw, { least: range.fewest ?? 1, most })) return z.NEVER;
      return raw.map((item: unknown, index) => {
        const read = readBare(item === undefined ? null : item, range);
        return read.ok ? read.value : refuse(ctx, read.code, read.detail, [index]);
      });
    })
    .meta({ type: 'array', items: numberJsonSchema(range), maxItems: most, description });
  fieldInfo.add(schema, { control: 'numbers' });
  return schema;
}

/** Turns from one end of an adjuster’s thread to the other: common practice, no published source. */
const MOST_TURNS = 15;

/** A rocker ratio, valve over lobe. */
export const ratio = (description: string) => bare(description, { above: 0, beyond: 100 });

/** The same of an engine in a call: no arm is outside of it (common practice, no source). */
export const rockerRatio = (description: string) => bare(description, { least: 0.5, most: 4, beyond: 100 });

/** Turns of a screw, nut or dial. */
export const turns = (description: string, range: NumberRange = {}) =>
  bare(description, { beyond: 1000, ...range });

/** The same of what is turned in a call: read as people say it, and no more than its thread has. */
export function threadTurns(description: string, range: NumberRange = {}, most = MOST_TURNS) {
  const schema = turns(description, range);
  fieldInfo.add(schema, { control: 'number', turns: { least: range.least ?? -most, most } });
  return schema;
}
