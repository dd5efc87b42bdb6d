import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { asEntered } from '../../../shared/quantities/as-entered.ts';
import type { FieldRange } from '../../../shared/quantities/field-range.ts';
import { readInField } from '../../../shared/quantities/read-in-field.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { answerUnit, type Dimension, type Quantity, type Unit } from '../../../shared/quantities/units.ts';
import { fieldInfo } from '../../../shared/schemas/field-info.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FieldData } from '../../../views/parts/field.examples.ts';
import { pickName, pickValue } from './picked-reading.ts';
import { type Fields, type FormFault, schemaAt } from './read-form.ts';

/** A form being shown: the text of its fields, and what was wrong with them. */
export interface FormState {
  readonly typed: Fields;
  readonly faults: readonly FormFault[];
  /** The name of the form, where a page has several: it goes before the ids, so that each stands once. */
  readonly prefix?: string;
  /** What reads it: its fields know from there what they can be. */
  readonly schema?: z.ZodObject;
}

export const FRESH: FormState = { typed: {}, faults: [] };

/** An id a label and an error link can point to. */
export const fieldId = (name: string, { prefix }: Pick<FormState, 'prefix'> = {}): string =>
  `${prefix === undefined ? '' : `${prefix}-`}f-${name.replaceAll('.', '-')}`;

/** A label that is a question is quoted: what is wrong is said of it. */
const faultSaid = (label: string, detail: string): string =>
  label.endsWith('?') ? `“${label}” ${detail}` : `${label} ${detail}`;

function errorOf(shown: FormState, name: string, label: string): string | undefined {
  const own = shown.faults.filter((fault) => fault.field === name || fault.field.startsWith(`${name}.`));
  return own.length === 0 ? undefined : own.map((fault) => faultSaid(label, fault.detail)).join('. ');
}

/** The readings of an entry to pick from, where it came back with several. */
export function asksOf(shown: FormState, name: string): Pick<FieldData, 'asks'> {
  const ambiguities = shown.faults.find((fault) => fault.field === name)?.ambiguities ?? [];
  if (ambiguities.length === 0) return {};
  const picked = shown.typed[pickName(name)];
  const asks = ambiguities.map((each) => ({
    value: pickValue(each),
    label: each.readAs,
    picked: pickValue(each) === picked,
  }));
  return { asks: { id: `${fieldId(name, shown)}-as`, name: pickName(name), readings: asks } };
}

const withError = (error: string | undefined) => (error === undefined ? {} : { error });

/** What else a field can have, beside its name, what was typed and what was wrong. */
export type Extra = Partial<
  Omit<FieldData, 'id' | 'name' | 'label' | 'value' | 'error' | 'echo' | 'perTurn' | 'canBe' | 'asks'>
>;

/** A field of words. */
export function textField(shown: FormState, name: string, label: string, extra: Extra = {}): Component {
  const data: FieldData = {
    id: fieldId(name, shown),
    name,
    label,
    value: shown.typed[name] ?? '',
    ...extra,
    ...withError(errorOf(shown, name, label)),
  };
  return { template: '/parts/field', data };
}

/** What a field can be, as its schema has it. */
function rangeOf({ schema }: FormState, name: string): FieldRange | undefined {
  const at = schema === undefined ? undefined : schemaAt(schema, name.split('.'));
  const info = at instanceof z.ZodType ? fieldInfo.get(at) : undefined;
  return info?.control === 'quantity' ? info.canBe : undefined;
}

/** `least most`, in SI, for the line that says how an entry is read while it is typed; what it mostly is stands behind. */
export const rangeText = ({ least, most, orZero, usual }: FieldRange): string =>
  `${least} ${most}${orZero === true ? ' 0' : ''}${usual === undefined ? '' : ` ~${usual.least} ${usual.most}`}`;

/** How an entry is understood, for the line below its field. */
function echoOf(
  text: string,
  dimension: Dimension,
  { assume, perTurn, range }: { assume?: Unit; perTurn?: Quantity; range?: FieldRange },
): string {
  if (text.trim() === '') return '';
  const options = { kind: dimension, ...defined({ assume, perTurn }) };
  const read = range === undefined ? readNumber(text, options) : readInField(text, { ...options, range });
  return read.ok ? asEntered(read.readAs) : '';
}

/**
 * A field for a quantity, with the unit that counts when none is typed and the line that says how it was read;
 * `echo` where that line is not the usual one.
 */
export function quantityField(
  shown: FormState,
  name: string,
  label: string,
  dimension: Dimension,
  extra: Extra & {
    readonly assume?: Unit;
    readonly perTurn?: Quantity;
    readonly echo?: string;
    readonly range?: FieldRange;
  } = {},
): Component {
  const { assume: given, perTurn, echo, range = rangeOf(shown, name), ...rest } = extra;
  const assume = given ?? answerUnit(dimension, spokenUnits());
  const value = shown.typed[name] ?? '';
  const data: FieldData = {
    id: fieldId(name, shown),
    name,
    label,
    value,
    ...defined({ unit: assume }),
    reads: dimension,
    ...(perTurn === undefined ? {} : { perTurn: `${perTurn.value} ${perTurn.unit}` }),
    ...(range === undefined ? {} : { canBe: rangeText(range) }),
    echo: echo ?? echoOf(value, dimension, defined({ assume, perTurn, range })),
    ...rest,
    ...asksOf(shown, name),
    ...withError(errorOf(shown, name, label)),
  };
  return { template: '/parts/field', data };
}

/** A field for a bare number. */
export function numberField(shown: FormState, name: string, label: string, extra: Extra = {}): Component {
  return textField(shown, name, label, extra);
}

export function areaField(
  shown: FormState,
  name: string,
  label: string,
  extra: { hint?: string; optional?: boolean; rows?: number } = {},
): Component {
  return {
    template: '/parts/textarea',
    data: {
      id: fieldId(name, shown),
      name,
      label,
      value: shown.typed[name] ?? '',
      ...extra,
      ...withError(errorOf(shown, name, label)),
    },
  };
}

/** One of a list of words, as a drop-down. */
export function selectField(
  shown: FormState,
  name: string,
  label: string,
  words: Readonly<Record<string, string>>,
  extra: { hint?: string; optional?: boolean; first?: string } = {},
): Component {
  const { first, ...rest } = extra;
  const options = [
    ...(first === undefined ? [] : [{ value: '', label: first }]),
    ...Object.entries(words).map(([value, text]) => ({ value, label: text })),
  ];
  return {
    template: '/parts/select',
    data: {
      id: fieldId(name, shown),
      name,
      label,
      options,
      value: shown.typed[name] ?? options[0]?.value ?? '',
      ...rest,
      ...withError(errorOf(shown, name, label)),
    },
  };
}

/** One of a few words, all of them in sight. */
export function choiceField(
  shown: FormState,
  name: string,
  legend: string,
  words: Readonly<Record<string, string>>,
  extra: { hint?: string; inline?: boolean } = {},
): Component {
  const chosen = shown.typed[name];
  return {
    template: '/parts/choice',
    data: {
      id: fieldId(name, shown),
      name,
      legend,
      options: Object.entries(words).map(([value, label]) => ({ value, label, checked: value === chosen })),
      ...extra,
      ...withError(errorOf(shown, name, legend)),
    },
  };
}

/** A box that is ticked or left alone. */
export function tickField(shown: FormState, name: string, label: string): Component {
  return {
    template: '/parts/choice',
    data: {
      id: fieldId(name, shown),
      name,
      kind: 'checkbox',
      legend: '',
      options: [{ value: 'yes', label, checked: shown.typed[name] === 'yes' }],
      ...withError(errorOf(shown, name, label)),
    },
  };
}

/** The links of an error summary, in the words that stand beside the fields. */
export function summaryOf(
  shown: FormState,
  labels: Readonly<Record<string, string>>,
): { field?: string; text: string }[] {
  return shown.faults.map((fault) => {
    const name = Object.keys(labels).find(
      (each) => fault.field === each || fault.field.startsWith(`${each}.`),
    );
    if (name === undefined)
      return {
        text: fault.field === '' ? fault.detail : `${fault.field} ${fault.detail}`,
        ...(fault.line === undefined ? {} : { field: `line-${fault.line}` }),
      };
    return { field: fieldId(name, shown), text: faultSaid(labels[name] ?? name, fault.detail) };
  });
}
