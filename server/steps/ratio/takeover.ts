import { LASH_STATES, LIFTERS, READING_KINDS, SPRINGS } from '../../../shared/schemas/words.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { type ShownSetUp, shownSetUps } from '../../call/shown-set-up.ts';
import { listed, type TakeoverItem, withoutUnit } from '../../call/takeover-items.ts';
import type { Reading } from '../../records/readings/readings.ts';

/** A pass as it was read; one that was struck or replaced in brackets, with the reason. */
function passText(reading: Reading, all: readonly Reading[]): string {
  const later = all.find(({ id }) => id === reading.replacedBy);
  const text = reading.peak.readAs;
  return later === undefined ? text : `(${withoutUnit(text)}: ${later.reason})`;
}

const KINDS: Readonly<Record<string, string>> = READING_KINDS;

function ofSetUp({ readings: all }: CallContext, { setUp, readings, detail }: ShownSetUp): TakeoverItem {
  const { spring, lifter, lash } = detail.setUp;
  const aside = detail.passes.flatMap((pass) => pass.aside?.sentence ?? []);
  const read = readings.filter((each) => !each.struck);
  const kinds = [...new Set(read.map(({ kind }) => kind))];
  const texts = kinds.map((kind) => {
    const passes = read.filter((each) => each.kind === kind).map((each) => passText(each, all));
    return `${(KINDS[kind] ?? kind).toLowerCase()} ${listed(passes)}`;
  });
  return {
    card: 'raw',
    label: `${valveName(setUp)}, set-up ${setUp.number}:`,
    text: texts.length === 0 ? 'no pass yet' : texts.join('; '),
    note: [
      [SPRINGS[spring], LIFTERS[lifter], `lash ${LASH_STATES[lash]}`].join(', ').toLowerCase(),
      ...aside,
    ].join('. '),
  };
}

/** Every pass of every set-up, with why one is in no figure. */
export const rawPasses = (context: CallContext): TakeoverItem[] =>
  shownSetUps(context).map((found) => ofSetUp(context, found));
