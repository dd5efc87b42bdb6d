import { defined } from '../../../shared/defined.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { limitNames } from '../../mechanics/assessment/common/limits.ts';
import type { Side, ValvePlace } from '../../mechanics/assessment/evidence.ts';
import { notFound } from '../../problems/failure.ts';
import type { Limit } from '../../records/limits/known-limits.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';

export const sideOf = ({ about }: ChangeDetail): Side | undefined =>
  'valve' in about ? sideOfValve(about.valve) : undefined;

/** What a ratio does on one valve; of a side, while none of its valves was read. */
export const changeOn = ({ details }: Assessment, valve: ValvePlace): ChangeDetail | undefined =>
  details.change.find(
    ({ about }) =>
      (about.of === 'valve' && about.cylinder === valve.cylinder && about.valve === valve.valve) ||
      (about.of === 'side' && about.valve === sideOfValve(valve.valve)),
  );

/** What a ratio does on what is named: `1-intake`, `exhaust:planned-1.7`. */
export function changeNamed({ details }: Assessment, name: string): ChangeDetail {
  const found = details.change.find(({ key }) => key === name);
  if (found === undefined) throw notFound('valve');
  return found;
}

/** The set-up that the ratio after was read in, if it was read. */
export function setUpRead(record: BuildRecord, { after }: ChangeDetail): SetUp | undefined {
  const reading = record.readings.find(({ id }) => after?.restsOn.includes(id));
  return record.setUps.find(({ id }) => id === reading?.setUpId);
}

/** The limits of the gaps of one side, as the shop has them now. */
export function limitsUsed({ limits, build }: BuildRecord, detail: ChangeDetail): Limit[] {
  const { use, rodMaterial } = build.spec.engine ?? {};
  const built = defined({ use, rodMaterial });
  const names = detail.gaps.flatMap(({ name }) => limitNames(name, sideOf(detail) ?? 'intake', built));
  return names.flatMap((name) => limits.get(name) ?? []);
}

/** The readings of the sheet that its gaps rest on. */
export const readingsUsed = ({ sheetReadings }: BuildRecord, { gaps }: ChangeDetail): SheetReading[] =>
  sheetReadings.filter(({ id }) => gaps.some(({ restsOn }) => restsOn.includes(id)));
