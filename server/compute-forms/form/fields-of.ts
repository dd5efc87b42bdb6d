import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import {
  areaField,
  type FormState,
  numberField,
  quantityField,
  selectField,
  textField,
} from '../../web/forms/fields.ts';
import { rowsTyped } from './body-of.ts';
import type { Control, Entry, Group, Leaf } from './control.ts';
import { rowsShown } from './leaves.ts';

const MOST_LINES = 12;

function lineCount(text: string | undefined): number {
  return Math.min(MOST_LINES, Math.max(3, (text ?? '').split('\n').length + 1));
}

/** How a longer entry is written, after what it is. */
function howWritten(entry: Entry): string {
  switch (entry.as) {
    case 'quantities':
      return `One on a line; ${entry.unit}, where no unit is typed.`;
    case 'numbers':
      return 'One on a line.';
    case 'lines': {
      const columns = entry.columns.map((column) =>
        column.entry.as === 'quantity'
          ? `${column.label.toLowerCase()} (${column.entry.unit})`
          : column.label.toLowerCase(),
      );
      return `One on a line: ${columns.join('; ')}.`;
    }
    case 'grid':
      return 'One group on a line, its values with semicolons between.';
    case 'event':
      return `An angle and its side, such as 31 ${entry.sides[0] ?? ''}: ${entry.sides.join(' or ')}.`;
    case 'json':
      return 'Written as JSON.';
    default:
      return '';
  }
}

function sentence(text: string): string {
  const shown = text.charAt(0).toUpperCase() + text.slice(1);
  return shown === '' || /[.!?]$/.test(shown) ? shown : `${shown}.`;
}

function hintOf(leaf: Leaf): string {
  return [sentence(leaf.about), howWritten(leaf.entry)].filter((each) => each !== '').join(' ');
}

function leafComponent(leaf: Leaf, shown: FormState): Component {
  const { name, label, entry, optional } = leaf;
  const hint = hintOf(leaf);
  const extra = { ...(hint === '' ? {} : { hint }), ...(optional ? { optional } : {}) };
  const first = optional ? 'Left out' : 'Choose';
  switch (entry.as) {
    case 'quantity':
      return quantityField(shown, name, label, entry.dimension, { ...extra, assume: entry.unit });
    case 'turns':
    case 'number':
      return numberField(shown, name, label, extra);
    case 'word': {
      const words = Object.fromEntries(entry.words.map((word) => [word, word.replaceAll('-', ' ')]));
      return selectField(shown, name, label, words, { ...extra, first });
    }
    case 'truth':
      return selectField(shown, name, label, { yes: 'yes', no: 'no' }, { ...extra, first });
    case 'event':
    case 'text':
      return textField(shown, name, label, extra);
    default:
      return areaField(shown, name, label, { ...extra, rows: lineCount(shown.typed[name]) });
  }
}

/** Fields, and the groups within it, of one group. */
function groupsOf(group: Group, legend: string, shown: FormState): FormGroup[] {
  const optional = group.optional ? 'May be left out.' : '';
  const hint = [sentence(group.about), optional].filter((each) => each !== '').join(' ');
  const leaves = group.parts.filter((part): part is Leaf => part.kind === 'leaf');
  const others = group.parts.filter((part) => part.kind !== 'leaf');
  const own: FormGroup = {
    legend,
    ...(hint === '' ? {} : { hint }),
    slots: leaves.map((leaf) => leafComponent(leaf, shown)),
    columns: true,
  };
  return [
    ...(leaves.length === 0 && hint === '' ? [] : [own]),
    ...others.flatMap((part) => formGroups([part], shown, `${legend}, `)),
  ];
}

function controlGroups(control: Exclude<Control, Leaf>, shown: FormState, above: string): FormGroup[] {
  const legend = above === '' ? control.label : above + control.label.toLowerCase();
  if (control.kind === 'group') return groupsOf(control, legend, shown);
  return rowsShown(control.name, shown.typed).flatMap((row) => {
    const item = control.item(row);
    // What the list is, and that it may be left out, is said once.
    const words =
      row === 0 ? { about: control.about, optional: control.optional } : { about: '', optional: false };
    return groupsOf({ ...item, ...words }, item.label, shown);
  });
}

/** The groups of fields that a form shows, plain entries first come first, runs of them together. */
export function formGroups(controls: readonly Control[], shown: FormState, above = ''): FormGroup[] {
  const groups: FormGroup[] = [];
  let plain: Component[] = [];
  for (const control of controls) {
    if (control.kind === 'leaf') {
      plain.push(leafComponent(control, shown));
      continue;
    }
    if (plain.length > 0) groups.push({ slots: plain, columns: true });
    plain = [];
    groups.push(...controlGroups(control, shown, above));
  }
  return plain.length > 0 ? [...groups, { slots: plain, columns: true }] : groups;
}

/** A button for each repeated group that shows the form again with one row more. */
export function rowButtons(controls: readonly Control[], shown: FormState): ButtonData[] {
  return controls
    .filter((control) => control.kind === 'repeat' && rowsTyped(control.name, shown.typed).length > 0)
    .map((control) => ({
      label: `Add to ${control.label.toLowerCase()}`,
      name: 'more',
      value: control.name,
    }));
}
