import type { TableData } from '../../views/parts/table.examples.ts';

/** One valve, in inches; what is not known is left out of the drawing. */
export interface ValveMargins {
  readonly installedHeight: number;
  readonly netLift: number;
  /** Where no lash is known it is the most that there can be, and no net lift. */
  readonly noLashKnown?: boolean;
  /** Height, from the seat that the installed height is from, at which the first of the springs goes solid. */
  readonly solidHeight?: number;
  /** What the room above it is called. */
  readonly bindTitle?: string;
  /** Retainer's underside to the seal, valve shut. */
  readonly retainerToSeal?: number;
  /** Where valve and piston come closest. */
  readonly piston?: {
    readonly lift: number;
    readonly gap: number;
    readonly atCrank: string;
    /** Left out where nobody said it: then its crown is drawn flat. */
    readonly floor?: 'pocket' | 'flat';
  };
  /** The least that has to be left, of those that are drawn. */
  readonly limits?: { readonly bind?: number; readonly seal?: number; readonly piston?: number };
}

type Figure = (inches: number) => string;

/** What is left before the first spring goes solid, at full lift. */
export const bindOf = ({ installedHeight, netLift, solidHeight }: ValveMargins): number | undefined =>
  solidHeight === undefined ? undefined : installedHeight - netLift - solidHeight;

/** What is left between retainer and seal, at full lift. */
export const sealOf = ({ retainerToSeal, netLift }: ValveMargins): number | undefined =>
  retainerToSeal === undefined ? undefined : retainerToSeal - netLift;

/** The same gaps as figures. */
export function gapsTable(data: ValveMargins, figure: Figure, unit: string): TableData {
  const { bindTitle = 'To coil bind', netLift, piston } = data;
  const [bind, seal] = [bindOf(data), sealOf(data)];
  return {
    caption: 'Gaps of this valve',
    columns: [{ label: 'Gap' }, { label: `Left, ${unit}`, number: true }],
    rows: [
      { cells: [liftName(data), figure(netLift)] },
      ...(bind === undefined ? [] : [{ cells: [`${bindTitle}, full lift`, figure(bind)] }]),
      ...(seal === undefined ? [] : [{ cells: ['Retainer to seal, full lift', figure(seal)] }]),
      ...(piston === undefined
        ? []
        : [{ cells: [`Piston to valve, ${piston.atCrank}`, figure(piston.gap)] }]),
    ],
  };
}

/** Broken lines are limits; how deep a pocket is cut nobody said. */
export const captionOf = ({ piston, limits }: ValveMargins, unit: string): string =>
  [
    'Along the stem; the stem is broken off between spring seat and head',
    `figures in ${unit}`,
    ...(limits === undefined ? [] : ['broken lines: the limits']),
    ...(piston?.floor === 'pocket' ? ['the pocket’s walls are drawn, not measured'] : []),
  ].join('; ');

const liftName = ({ noLashKnown }: ValveMargins): string =>
  noLashKnown === true ? 'Gross lift, no lash known' : 'Net lift';

const leftSaid = (gap: number, text: (inches: number) => string): string =>
  gap < 0 ? `${text(-gap)} is missing` : `${text(gap)} is left`;

/** The drawing in words. */
export function describe(
  data: ValveMargins,
  bind: number | undefined,
  seal: number | undefined,
  text: (inches: number) => string,
): string {
  const { piston } = data;
  return [
    `${liftName(data)} ${text(data.netLift)}.`,
    ...(bind === undefined ? [] : [`${leftSaid(bind, text)} before coil bind.`]),
    ...(seal === undefined ? [] : [`${leftSaid(seal, text)} between retainer and seal.`]),
    ...(piston === undefined ? [] : [`Closest to the piston ${piston.atCrank}: ${text(piston.gap)}.`]),
  ].join(' ');
}
