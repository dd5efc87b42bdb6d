import { listed, THREADS, type Thread } from './thread-table.ts';

export type DesignationReading<Found = Thread> =
  | { readonly ok: true; readonly thread: Found }
  | { readonly ok: false; readonly detail: string };

/** Longer than any designation; keeps the patterns below from being fed whole documents. */
const LONGEST = 60;

/** `size`, then `count` (threads to the inch), a series and a class, each of which may be missing. */
const UNIFIED =
  /^(\d+\/\d+|\d*\.\d+)(?:"|''|inches|inch|in)?(?:[-x](\d+)(?:tpi)?)?-?(un[a-z]{1,3}|fine|coarse)?-?(\d[a-z])?$/;
/** `size`, then the pitch in millimetres, what it is called, and a class. */
const METRIC = /^m(\d+(?:\.\d+)?)(?:[-x](\d+(?:\.\d+)?)(?:mm)?)?-?(fine|coarse)?-?(\d[a-z])?$/;

const calledIn = (word: string | undefined): Called | undefined =>
  word === 'fine' || word === 'coarse' ? word : undefined;

interface Parts {
  readonly ofSize: readonly Thread[];
  readonly count?: number;
  readonly series?: string;
  /** `fine` or `coarse`, as a metric thread was called beside its size or pitch. */
  readonly called?: Called;
  readonly fitClass?: string;
}

type Called = 'fine' | 'coarse';
/** What the inch threads call them. */
const SERIES: Readonly<Record<Called, string>> = { fine: 'unf', coarse: 'unc' };

/** As people write it, brought to one spelling: `m8x1.25`, `7/16-20`. */
export function normalised(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
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
  const [, size = '', count, word, fitClass] = match;
  const called = calledIn(word);
  const series = called === undefined ? word : SERIES[called];
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
  const [, size = '', count, word, fitClass] = match;
  return {
    ofSize: THREADS.filter((thread) => thread.system === 'metric' && thread.size === `M${Number(size)}`),
    ...withPart('count', count === undefined ? undefined : Number(count)),
    ...withPart('called', calledIn(word)),
    ...withPart('fitClass', fitClass),
  };
}

const no = (detail: string): DesignationReading => ({ ok: false, detail });

/** Of the metric pitches of a size one is the coarse one, the largest (ISO 261); the others are fine. */
function isCalled(thread: Thread, called: Called, ofSize: readonly Thread[]): boolean {
  const isCoarse = thread.count === Math.max(...ofSize.map((each) => each.count));
  return isCoarse === (called === 'coarse');
}

/** Those that it may be: by their pitch, else by what they are called. */
function namedOf({ ofSize, count, series, called }: Parts): readonly Thread[] {
  if (count !== undefined) return ofSize.filter((thread) => thread.count === count);
  if (called !== undefined) return ofSize.filter((thread) => isCalled(thread, called, ofSize));
  return series === undefined ? [] : ofSize.filter((thread) => thread.series?.toLowerCase() === series);
}

function settle(parts: Parts): DesignationReading {
  const { ofSize, count, series, called, fitClass } = parts;
  if (ofSize.length === 0) return no(`is of a size that is not in the table; known: ${listed(THREADS)}`);
  const named = namedOf(parts);
  if (named.length > 1) return no(`needs its pitch; known: ${listed(named)}`);
  const [thread] = named;
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
  if (called !== undefined && !isCalled(thread, called, ofSize))
    return no(`${thread.designation} is not the ${called} one; known of this size: ${listed(ofSize)}`);
  if (fitClass !== undefined && thread.fitClass.toLowerCase() !== fitClass) {
    return no(`is in the table in class ${thread.fitClass} alone`);
  }
  return { ok: true, thread };
}

/**
 * Finds a thread by its designation as people write it: `7/16-20`, `7/16 - 20 UNF-2A`, `7/16 UNF`, `7/16 fine`, `.4375-20`,
 * `M8x1.25`, `m8 × 1,25 - 6g`, `M8 fine`. A size alone is not enough: its pitches are listed instead of one being guessed.
 */
export function readDesignation(text: string): DesignationReading {
  const plain = text.length > LONGEST ? '' : normalised(text);
  const parts = unifiedParts(plain) ?? metricParts(plain);
  if (parts === undefined) {
    return no(`must be a thread such as 7/16-20 or M8×1.25; known: ${listed(THREADS)}`);
  }
  return settle(parts);
}
