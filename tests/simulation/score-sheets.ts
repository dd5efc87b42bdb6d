import type { SheetOddDetail } from '../../server/mechanics/assessment/sheet/rows/detail.ts';
import type { Chance } from '../mechanics/explain-readings/random.ts';
import { isOdd, type Odd, readSheet, type SheetRead } from './odd-valve.ts';
import { type Share, shareOf } from './shares.ts';

export interface SheetsScored {
  readonly sheets: readonly SheetRead[];
  /** The odd valve is among those named. */
  readonly named: Share;
  /** Valves named that are like their siblings, of all of those. */
  readonly falseAlarms: Share;
  /** Sheets with a row that is asked about first. */
  readonly inDoubt: Share;
  /** What the odd valve is held to be, of those named. */
  readonly causes: ReadonlyMap<SheetOddDetail['cause'], Share>;
}

export function scoreSheets(chance: Chance, count: number, odd?: Odd): SheetsScored {
  const sheets = Array.from({ length: count }, () => readSheet(chance, odd));
  const rightly = sheets.flatMap((sheet) => sheet.named.filter((each) => isOdd(sheet, each)));
  const alike = sheets.flatMap((sheet) =>
    sheet.rows
      .filter((row) => !isOdd(sheet, row))
      .map((row) =>
        sheet.named.some(({ cylinder, valve }) => cylinder === row.cylinder && valve === row.valve),
      ),
  );
  const causes = [...new Set(rightly.map(({ cause }) => cause))].sort();
  return {
    sheets,
    named: shareOf(sheets, (sheet) => sheet.named.some((each) => isOdd(sheet, each))),
    falseAlarms: shareOf(alike, (named) => named),
    inDoubt: shareOf(sheets, ({ inDoubt }) => inDoubt > 0),
    causes: new Map(causes.map((cause) => [cause, shareOf(rightly, (each) => each.cause === cause)])),
  };
}
