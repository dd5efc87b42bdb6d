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
  extra: { hint?: string; optional?: boolean; big?: boolean; autofocus?: boolean; perTurn?: Quantity } = {},
): Component {
  const text = shown.typed[name] ?? '';
  if (!saysBetween(text)) return quantityField(shown, name, label, 'length', extra);
  const read = readBetween(text, toldIn('in'));
  return quantityField(shown, name, label, 'length', {
    ...extra,
    echo: read.ok ? sayBounds(read.between) : '',
  });
}
