import type { Component } from '../../../views/parts/components.ts';
import { valveName } from '../../call/context.ts';
import type { ReportData } from './report-data.ts';
import { consequencesComponents } from './sections/consequences.ts';
import { identifiedComponents } from './sections/identified.ts';
import { marksAndLashComponents } from './sections/marks.ts';
import { photographsComponents } from './sections/photographs.ts';
import { setUpComponents } from './sections/set-up.ts';
import { sheetComponents } from './sections/sheet.ts';
import { workingsComponents } from './sections/workings.ts';

const PARTS = {
  identified: identifiedComponents,
  ratio: ({ context, explained }: ReportData): Component[] => {
    const newest = new Map(context.setUps.map((setUp) => [valveName(setUp), setUp.id]));
    return context.ratios.flatMap((found) => {
      const { id } = found.setUp;
      // What an older set-up of the valve raised, the newest one takes into account.
      const isNewest = newest.get(valveName(found.setUp)) === id;
      return setUpComponents(context, found, isNewest ? explained.get(id) : undefined);
    });
  },
  sheet: sheetComponents,
  consequences: consequencesComponents,
  marks: marksAndLashComponents,
  workings: workingsComponents,
  photographs: photographsComponents,
} as const;
type PartName = keyof typeof PARTS;

const USUAL: readonly PartName[] = [
  'ratio',
  'sheet',
  'consequences',
  'identified',
  'marks',
  'workings',
  'photographs',
];

/** What is first on the sheet is what the caller rang for. */
const FIRST: Readonly<Record<string, readonly PartName[]>> = {
  identify: ['identified', 'photographs'],
  'choose-ratio': ['consequences', 'ratio'],
  'clearances-after-a-change': ['consequences', 'ratio'],
  geometry: ['marks', 'workings', 'photographs'],
  'cam-timing': ['workings'],
  adjuster: ['marks', 'workings', 'sheet'],
  'noise-or-failure': ['marks', 'sheet', 'workings'],
  'returned-part': ['identified', 'photographs', 'sheet'],
};

/** The parts of the report that have something to say, in the order of the call's goal. */
export function partsInOrder(report: ReportData): Component[] {
  const first = FIRST[report.context.call.goal] ?? [];
  const order = [...first, ...USUAL.filter((name) => !first.includes(name))];
  return order.flatMap((name) => PARTS[name](report));
}
