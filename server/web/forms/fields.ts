import { defined } from '../../../shared/defined.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { type Dimension, type Quantity, type Unit, unitsOf } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FieldData } from '../../../views/parts/field.examples.ts';
import type { Fields, FormFault } from './read-form.ts';

/** A form being shown: the text of its fields, and what was wrong with them. */
export interface FormState {
  readonly typed: Fields;
  readonly faults: readonly FormFault[];
  /** The name of the form, where a page has several: it goes before the ids, so that each stands once. */
  readonly prefix?: string;
}

export const FRESH: FormState = { typed: {}, faults: [] };

/** An id a label and an error link can point to. */
export const fieldId = (name: string, { prefix }: Pick<FormState, 'prefix'> = {}): string =>
  `${prefix === undefined ? '' : `${prefix}-`}f-${name.replaceAll('.', '-')}`;

function errorOf(shown: FormState, name: string, label: string): string | undefined {
  const own = shown.faults.filter((fault) => fault.field === name || fault.field.startsWith(`${name}.`));
  return own.length === 0 ? undefined : own.map((fault) => `${label} ${fault.detail}`).join('. ');
}

const withError = (error: string | undefined) => (error === undefined ? {} : { error });

/** What else a field can have, beside its name, what was typed and what was wrong. */
export type Extra = Partial<
  Omit<FieldData, 'id' | 'name' | 'label' | 'value' | 'error' | 'echo' | 'perTurn'>
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

/** How an entry is understood, for the line below its field. */
function echoOf(
  text: string,
  dimension: Dimension | 'ratio',
  assume: Unit | undefined,
  perTurn?: Quantity,
): string {
  if (text.trim() === '') return '';
  const read = readNumber(text, {
    kind: dimension,
    ...defined({ assume, perTurn }),
  });
  return read.ok ? read.readAs : '';
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
  extra: Extra & { readonly assume?: Unit; readonly perTurn?: Quantity; readonly echo?: string } = {},
): Component {
  const { assume: given, perTurn, echo, ...rest } = extra;
  const assume = given ?? unitsOf(dimension)[0];
  const value = shown.typed[name] ?? '';
  const data: FieldData = {
    id: fieldId(name, shown),
    name,
    label,
    value,
    ...defined({ unit: assume }),
    reads: dimension,
    ...(perTurn === undefined ? {} : { perTurn: `${perTurn.value} ${perTurn.unit}` }),
    echo: echo ?? echoOf(value, dimension, assume, perTurn),
    ...rest,
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
      return { text: fault.field === '' ? fault.detail : `${fault.field} ${fault.detail}` };
    return { field: fieldId(name, shown), text: `${labels[name] ?? name} ${fault.detail}` };
  });
}
