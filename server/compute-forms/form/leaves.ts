import type { Fields } from '../../web/forms/read-form.ts';
import { rowsTyped } from './body-of.ts';
import type { Control, Leaf } from './control.ts';

/** Rows of a repeated group to show: those typed into, one more, and those asked for. */
export function rowsShown(name: string, fields: Fields): number[] {
  const typed = rowsTyped(name, fields);
  const last = typed.at(-1) ?? -1;
  return fields.more === name || typed.length === 0 ? [...typed, last + 1] : typed;
}

/** Every single entry of a form as it stands, with the words that lead to it. */
export function leavesOf(controls: readonly Control[], fields: Fields, above = ''): Leaf[] {
  return controls.flatMap((control): Leaf[] => {
    const label = above === '' ? control.label : `${above}, ${control.label.toLowerCase()}`;
    switch (control.kind) {
      case 'leaf':
        return [{ ...control, label }];
      case 'group':
        return leavesOf(control.parts, fields, label);
      default:
        return rowsShown(control.name, fields).flatMap((row) => leavesOf([control.item(row)], fields, above));
    }
  });
}
