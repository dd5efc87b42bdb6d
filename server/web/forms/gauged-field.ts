import { readBetween, sayBounds, saysBetween } from '../../../shared/quantities/read-between.ts';
import { toldIn } from '../../../shared/quantities/spoken-units.ts';
import type { Quantity } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/components.ts';
import { type FormState, quantityField } from './fields.ts';

/** A field for a length that may lie between two gauges; its echo says both bounds. */
export function gaugedField(
  shown: FormState,
  name: string,
  label: string,
  own: {
    hint?: string;
    optional?: boolean;
    big?: boolean;
    wide?: boolean;
    autofocus?: boolean;
    perTurn?: Quantity;
  } = {},
): Component {
  const extra = { wide: true, ...own, between: true };
  const text = shown.typed[name] ?? '';
  if (!saysBetween(text)) return quantityField(shown, name, label, 'length', extra);
  const read = readBetween(text, toldIn('in'));
  return quantityField(shown, name, label, 'length', {
    ...extra,
    echo: read.ok ? sayBounds(read.between) : '',
  });
}
