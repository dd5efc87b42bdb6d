import { MOUNTS, PART_SIZES, RINGS, TIPS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { IDENTIFICATION_MODEL } from '../../mechanics/identify/model.ts';

/** A column of the catalogue's file: what it holds, and what is allowed in it. */
export type Column =
  | { readonly name: string; readonly holds: 'text'; readonly most: number; readonly required?: boolean }
  | { readonly name: string; readonly holds: 'word'; readonly words: Readonly<Record<string, string>> }
  | { readonly name: string; readonly holds: 'length'; readonly least: number; readonly most: number }
  | { readonly name: string; readonly holds: 'number'; readonly above: number; readonly most: number };

/** The column of the table, and of the file, that holds each size in inches. */
export const SIZE_COLUMNS = {
  'hole-across-trunnion': 'hole_in',
  'width-across-trunnion': 'width_across_trunnion_in',
  'roller-diameter': 'roller_diameter_in',
  'body-width': 'body_width_in',
  'pivot-to-tip': 'pivot_to_tip_in',
  'pivot-to-cup': 'pivot_to_cup_in',
} as const satisfies Record<keyof typeof PART_SIZES, string>;

/** The columns of the file, in the order in which they are written. */
export const COLUMNS: readonly Column[] = [
  { name: 'code', holds: 'text', most: 60, required: true },
  { name: 'name', holds: 'text', most: 120, required: true },
  { name: 'fits', holds: 'text', most: 200 },
  { name: 'mount', holds: 'word', words: MOUNTS },
  { name: 'tip', holds: 'word', words: TIPS },
  { name: 'rings', holds: 'word', words: RINGS },
  { name: 'nominal_ratio', holds: 'number', above: 0, most: 5 },
  ...keysOf(PART_SIZES).map((kind): Column => {
    const { least, most } = IDENTIFICATION_MODEL.sizes[kind].allowed;
    return { name: SIZE_COLUMNS[kind], holds: 'length', least, most };
  }),
  { name: 'weight', holds: 'number', above: 0, most: 1000 },
  { name: 'notes', holds: 'text', most: 1000 },
];
