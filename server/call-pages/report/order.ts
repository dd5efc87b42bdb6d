import type { Component } from '../../../views/parts/part.ts';
import { valveName } from '../../call/context.ts';
import type { ReportData } from './report-data.ts';
import { consequencesSection } from './sections/consequences.ts';
import { identifiedSection } from './sections/identified.ts';
import { marksSection } from './sections/marks.ts';
import { photographsSection } from './sections/photographs.ts';
import { setUpSection } from './sections/set-up.ts';
import { sheetSection } from './sections/sheet.ts';
import { workingsSection } from './sections/workings.ts';

const PARTS = {
  identified: identifiedSection,
  ratio: ({ context, explained }: ReportData): Component[] => {
    const newest = new Map(context.setUps.map((setUp) => [valveName(setUp), setUp.id]));
    return context.ratios.flatMap((found) => {
      const { id } = found.setUp;
      // What an older set-up of the valve raised, the newest one takes into account.
      const isNewest = newest.get(valveName(found.setUp)) === id;
      return setUpSection(context, found, isNewest ? explained.get(id) : undefined);
    });
  },
  sheet: sheetSection,
  consequences: consequencesSection,
  marks: marksSection,
  workings: workingsSection,
  photographs: photographsSection,
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
