import { LASH_STATES, LIFTERS, READING_KINDS, SPRINGS } from '../../../shared/schemas/words.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { listed, type TakeoverItem, withoutUnit } from '../../call/takeover-items.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';

/** A pass as it was read; one that was struck or replaced in brackets, with the reason. */
function passText(reading: Reading, all: readonly Reading[]): string {
  const later = all.find(({ id }) => id === reading.replacedBy);
  const text = reading.peak.readAs;
  return later === undefined ? text : `(${withoutUnit(text)}: ${later.reason})`;
}

const KINDS: Readonly<Record<string, string>> = READING_KINDS;

function ofSetUp({ readings }: CallContext, setUp: SetUp): TakeoverItem {
  const { spring, lifter, lash } = setUp.method;
  const read = readings.filter((each) => each.setUpId === setUp.id && !each.struck);
  const kinds = [...new Set(read.map(({ kind }) => kind))];
  const texts = kinds.map((kind) => {
    const passes = read.filter((each) => each.kind === kind).map((each) => passText(each, readings));
    return `${(KINDS[kind] ?? kind).toLowerCase()} ${listed(passes)}`;
  });
  return {
    card: 'raw',
    label: `${valveName(setUp)}, set-up ${setUp.number}:`,
    text: texts.length === 0 ? 'no pass yet' : texts.join('; '),
    note: [SPRINGS[spring], LIFTERS[lifter], `lash ${LASH_STATES[lash].toLowerCase()}`]
      .join(', ')
      .toLowerCase(),
  };
}

/** Every pass of every set-up. */
export const rawPasses = (context: CallContext): TakeoverItem[] =>
  context.setUps.map((setUp) => ofSetUp(context, setUp));
