import { readBetween, sayBounds, saysBetween } from '../../../shared/quantities/read-between.ts';
import type { Component } from '../../../views/parts/part.ts';
import { type FormState, quantityField } from './fields.ts';

/** A field for a length that may lie between two gauges; its echo says both bounds. */
export function gaugedField(
  shown: FormState,
  name: string,
  label: string,
  extra: { hint?: string; optional?: boolean; big?: boolean; autofocus?: boolean } = {},
): Component {
  const slot = quantityField(shown, name, label, 'length', extra);
  const text = shown.typed[name] ?? '';
  if (!saysBetween(text)) return slot;
  const read = readBetween(text, 'in');
  return { ...slot, data: { ...slot.data, echo: read.ok ? sayBounds(read.between) : '' } };
}
