import type { FieldRange } from '../../shared/quantities/field-range.ts';
import type { NumberKind } from '../../shared/quantities/number-types.ts';
import { readBetween, sayBounds, saysBetween } from '../../shared/quantities/read-between.ts';
import { readInField } from '../../shared/quantities/read-in-field.ts';
import { type NumberReading, readNumber } from '../../shared/quantities/read-number.ts';
import { isUnit, type Quantity, UNITS, type Unit } from '../../shared/quantities/units.ts';

const KINDS = new Set<string>([
  'ratio',
  'turns',
  'count',
  ...Object.values(UNITS).map((unit) => unit.dimension),
]);
const isKind = (text: string): text is NumberKind => KINDS.has(text);

function quantityOf(text: string | undefined): Quantity | undefined {
  const [value = '', unit = ''] = (text ?? '').split(' ');
  return isUnit(unit) && Number(value) > 0 ? { value: Number(value), unit } : undefined;
}

function unitOf(text: string | undefined): Unit | undefined {
  return text !== undefined && isUnit(text) ? text : undefined;
}

/** `least most`, in SI, with a zero behind where none is an answer too, and behind `~` what it mostly is. */
function rangeOf(text: string | undefined): FieldRange | undefined {
  const [all = '', mostly] = (text ?? '').split(' ~');
  const [least = '', most = '', zero] = all.split(' ');
  if (least === '' || most === '') return undefined;
  const range = { least: Number(least), most: Number(most), orZero: zero !== undefined };
  if (mostly === undefined) return range;
  const [from, to] = mostly.split(' ').map(Number);
  return from === undefined || to === undefined ? range : { ...range, usual: { least: from, most: to } };
}

/** What a field reads by: its kind, the unit of a bare number, the travel of its dial in a turn, and what it can be. */
function readsBy({ dataset: { reads = '', assume, perTurn, canBe } }: HTMLInputElement) {
  if (!isKind(reads)) return undefined;
  const unit = unitOf(assume);
  const turn = quantityOf(perTurn);
  const range = rangeOf(canBe);
  return {
    kind: reads,
    ...(unit === undefined ? {} : { assume: unit }),
    ...(turn === undefined ? {} : { perTurn: turn }),
    ...(range === undefined ? {} : { range }),
  };
}

/** What is typed in a field, as it is read there. */
export function readTyped(
  field: HTMLInputElement,
): { readonly read: NumberReading; readonly perTurn?: Quantity } | undefined {
  const by = readsBy(field);
  if (by === undefined || field.value.trim() === '') return undefined;
  const { range, ...plain } = by;
  const read =
    range === undefined ? readNumber(field.value, plain) : readInField(field.value, { ...plain, range });
  return { read, ...(by.perTurn === undefined ? {} : { perTurn: by.perTurn }) };
}

/** How an entry would be read, or what it could mean; no fault is told before the form is sent. */
function understood(field: HTMLInputElement): { readonly as?: string; readonly asks?: string } {
  const { reads, assume } = field.dataset;
  if (reads === 'length' && saysBetween(field.value)) {
    const between = readBetween(field.value, unitOf(assume));
    return between.ok ? { as: sayBounds(between.between) } : {};
  }
  const typed = readTyped(field);
  if (typed === undefined) return {};
  const { read } = typed;
  if (read.ok) return { as: read.readAs };
  if (read.ambiguities.length === 0) return {};
  return { asks: `${read.ambiguities.map((each) => each.readAs).join(', or ')}? Write the unit with it.` };
}

function echo(field: HTMLInputElement): void {
  const line = document.querySelector(`[data-echo-for="${CSS.escape(field.id)}"]`);
  if (line === null) return;
  const { as, asks } = understood(field);
  if (as === undefined) {
    line.textContent = asks ?? '';
    return;
  }
  const value = document.createElement('b');
  value.textContent = as;
  line.replaceChildren('read as ', value);
}

/** Says below a field how what is typed in it is read, while it is typed. */
export function echoEntries(): void {
  document.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLInputElement && target.dataset.reads !== undefined) echo(target);
  });
}
