import { listed, THREADS, type Thread } from './thread-table.ts';

export type DesignationReading<Found = Thread> =
  | { readonly ok: true; readonly thread: Found }
  | { readonly ok: false; readonly detail: string };

/** Longer than any designation; keeps the patterns below from being fed whole documents. */
const LONGEST = 60;

/** `size`, then `count` (threads to the inch), a series and a class, each of which may be missing. */
const UNIFIED =
  /^(\d+\/\d+|\d*\.\d+)(?:"|''|inches|inch|in)?(?:[-x](\d+)(?:tpi)?)?-?(un[a-z]{1,3})?-?(\d[a-z])?$/;
/** `size`, then the pitch in millimetres and a class. */
const METRIC = /^m(\d+(?:\.\d+)?)(?:[-x](\d+(?:\.\d+)?)(?:mm)?)?-?(\d[a-z])?$/;

interface Parts {
  readonly ofSize: readonly Thread[];
  readonly count?: number;
  readonly series?: string;
  readonly fitClass?: string;
}

/** As people write it, brought to one spelling: `m8x1.25`, `7/16-20`. */
export function normalised(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/\bfine\b/g, 'unf')
    .replace(/\bcoarse\b/g, 'unc')
    .replace(/[×*]/g, 'x')
    .replace(/[‐-―−]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/[”“]/g, '"')
    .replace(/[′’]/g, "'")
    .replace(/(\d),(?=\d)/g, '$1.')
    .replace(/\s*([-x/])\s*/g, '$1')
    .replace(/(\d)\s+(?=\d)/g, '$1-')
    .replace(/\s+/g, '');
}

const withPart = <Name extends string, Value>(name: Name, value: Value | undefined) =>
  value === undefined ? {} : { [name]: value };

function unifiedParts(text: string): Parts | undefined {
  const match = UNIFIED.exec(text);
  if (match === null) return undefined;
  const [, size = '', count, series, fitClass] = match;
  const [top = '', bottom = '1'] = size.split('/');
  const inches = Number(top) / Number(bottom);
  const ofSize = THREADS.filter(({ system, size: own }) => {
    const [ownTop = '', ownBottom = '1'] = own.split('/');
    return system === 'unified' && Math.abs(Number(ownTop) / Number(ownBottom) - inches) < 1e-6;
  });
  return {
    ofSize,
    ...withPart('count', count === undefined ? undefined : Number(count)),
    ...withPart('series', series),
    ...withPart('fitClass', fitClass),
  };
}

function metricParts(text: string): Parts | undefined {
  const match = METRIC.exec(text);
  if (match === null) return undefined;
  const [, size = '', count, fitClass] = match;
  return {
    ofSize: THREADS.filter((thread) => thread.system === 'metric' && thread.size === `M${Number(size)}`),
    ...withPart('count', count === undefined ? undefined : Number(count)),
    ...withPart('fitClass', fitClass),
  };
}

const no = (detail: string): DesignationReading => ({ ok: false, detail });

function settle({ ofSize, count, series, fitClass }: Parts): DesignationReading {
  if (ofSize.length === 0) return no(`is of a size that is not in the table; known: ${listed(THREADS)}`);
  const named = ofSize.filter((thread) =>
    count === undefined ? thread.series?.toLowerCase() === series : thread.count === count,
  );
  const [thread] = count === undefined && series === undefined ? [] : named;
  if (thread === undefined) {
    const fault =
      count === undefined && series === undefined
        ? 'needs its pitch'
        : 'has a pitch that is not in the table';
    return no(`${fault}; known of this size: ${listed(ofSize)}`);
  }
  if (series !== undefined && thread.series?.toLowerCase() !== series) {
    return no(`${thread.designation} is not ${series.toUpperCase()}; known of this size: ${listed(ofSize)}`);
  }
  if (fitClass !== undefined && thread.fitClass.toLowerCase() !== fitClass) {
    return no(`is in the table in class ${thread.fitClass} alone`);
  }
  return { ok: true, thread };
}

/**
 * Finds a thread by its designation as people write it: `7/16-20`, `7/16 - 20 UNF-2A`, `7/16 UNF`, `7/16 fine`, `.4375-20`,
 * `M8x1.25`, `m8 × 1,25 - 6g`. A size alone is not enough: its pitches are listed instead of one being guessed.
 */
export function readDesignation(text: string): DesignationReading {
  const plain = text.length > LONGEST ? '' : normalised(text);
  const parts = unifiedParts(plain) ?? metricParts(plain);
  if (parts === undefined) {
    return no(`must be a thread such as 7/16-20 or M8×1.25; known: ${listed(THREADS)}`);
  }
  return settle(parts);
}
