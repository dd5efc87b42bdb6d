import type { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import type { Component } from '../../views/parts/components.ts';
import { type FormState, textField } from '../web/forms/fields.ts';
import { picksOf } from '../web/forms/picked-reading.ts';
import { type Fields, type FormOptions, type FormReading, readForm } from '../web/forms/read-form.ts';
import type { PageForm } from './forms.ts';

/** An entry put right or struck out: the old one stays where it was, with the reason. */
export function correctionForm(of: {
  readonly name: string;
  readonly action: string;
  /** The page of the entry, for those who leave it as it is. */
  readonly back: string;
  readonly labels: Readonly<Record<string, string>>;
  readonly initial?: Fields;
  readonly schema: z.ZodObject;
  readonly slots: (shown: FormState) => readonly Component[];
  /** `Such as “jaws were cocked, read again”.` */
  readonly reasonHint: string;
}): PageForm {
  const labels = { ...of.labels, reason: 'Why' };
  return {
    name: of.name,
    action: of.action,
    labels,
    schema: of.schema,
    ...defined({ initial: of.initial }),
    groups: (shown) => [
      { slots: [...of.slots(shown), textField(shown, 'reason', labels.reason, { hint: of.reasonHint })] },
    ],
    buttons: [
      { label: 'Correct it', kind: 'primary', name: 'act', value: 'replace', key: 'k' },
      { label: 'Strike it out', kind: 'danger', name: 'act', value: 'strike' },
      { label: 'Leave it', href: of.back },
    ],
  };
}

/** How an entry stands now, for the field that puts it right. */
export const standsAs = ({ readAs, typed }: { readonly readAs: string; readonly typed: string }): string =>
  `It stands as ${readAs}, typed “${typed}”.`;

/** The fields of a correction: one that must be filled in unless the entry is struck out, and those that may be. */
export interface CorrectedFields {
  readonly value: string;
  readonly along?: readonly string[];
  /** Something else is put right, so that the value may stand as it was. */
  readonly valueStands?: boolean;
}

/**
 * Reads a posted correction. Struck out, nothing but the reason is read; put right, `value` must be filled in unless
 * it stands, and `along` may be.
 */
export function readCorrection<Schema extends z.ZodObject>(
  schema: Schema,
  posted: Fields,
  { value, along = [], valueStands = false }: CorrectedFields,
  options: FormOptions,
): FormReading<z.output<Schema>> {
  const strikes = posted.act === 'strike';
  if (!strikes && !valueStands && (posted[value] ?? '').trim() === '') {
    const detail = 'is missing; to take the reading out without another in its place, strike it out';
    return { ok: false, faults: [{ field: value, detail }] };
  }
  const names = strikes ? [] : [value, ...along];
  const fields = Object.fromEntries(names.map((name) => [name, posted[name] ?? '']));
  return readForm(schema, { ...fields, ...picksOf(posted), reason: posted.reason ?? '' }, options);
}
