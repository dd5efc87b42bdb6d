import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import type { SettingDetail } from '../../mechanics/assessment/lash/detail.ts';
import { noticeComponent, tableComponent } from '../../web/components.ts';

function oneByOne({ rows }: SettingDetail): TableData {
  const stand = rows.some(({ stands }) => stands !== undefined);
  return {
    caption: 'Cylinder by cylinder, in firing order',
    columns: [
      { label: 'Cylinder' },
      ...(stand ? [{ label: 'Stands' }] : []),
      { label: 'Exhaust begins to open: set the intake' },
      { label: 'Intake nearly closed: set the exhaust' },
    ],
    rows: rows.map(({ cylinder, stands, setIntakeAt, setExhaustAt }) => ({
      cells: [
        String(cylinder),
        ...(stand ? [stands ?? ''] : []),
        `about ${setIntakeAt}°`,
        `about ${setExhaustAt}°`,
      ],
    })),
  };
}

function inTwo({ twoPositions }: SettingDetail): TableData[] {
  if (twoPositions === undefined) return [];
  return [
    {
      caption: 'In two positions, a turn of the crank apart',
      columns: [
        { label: 'At firing top dead centre' },
        { label: 'Set these intakes' },
        { label: 'Set these exhausts' },
      ],
      rows: twoPositions.map(({ firing, intakes, exhausts }) => ({
        cells: [`cylinder ${firing}, both its valves shut`, intakes.join(', '), exhausts.join(', ')],
      })),
    },
  ];
}

/** The tables of the setting order; none while the firing order is not known, or nothing may be set. */
export const settingTables = (setting: SettingDetail): Component[] =>
  setting.rows.length === 0 ? [] : [...inTwo(setting), oneByOne(setting)].map(tableComponent);

/** Which valve is set when: the rule, what is missing for the engine's own table, and the tables. */
export function settingComponents({ assessment, base }: CallContext): Component[] {
  const { setting } = assessment.details.lash;
  const lacks =
    setting.lacks.length === 0
      ? []
      : [
          noticeComponent(`For the table of this engine: ${setting.lacks.join(', ')}.`, {
            link: { href: `${base}/steps/build`, label: 'Engine and springs' },
          }),
        ];
  return [...setting.said.map((text) => noticeComponent(text)), ...lacks, ...settingTables(setting)];
}
