import { defined } from '../../../shared/defined.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { siIf } from '../../../shared/schemas/entered.ts';
import type { GapKind } from '../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { valveMargins } from '../../drawings/valve-margins.ts';
import type { ValveMargins } from '../../drawings/valve-margins-said.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { bareInches, inches as said } from '../../mechanics/assessment/common/said.ts';
import type { Side } from '../../mechanics/assessment/evidence.ts';
import { IN } from '../../mechanics/kit/si.ts';

const inches = (si: number): number => fromSi(si, 'in').value;
/** Figures as the tables beside it have them: no gauge on an engine is finer than a thousandth. */
const figure = (inInches: number): string => bareInches(inInches * IN);
const text = (inInches: number): string => said(inInches * IN);
const ruler = () => ({ ...rulerOf(spokenUnits()), figure, text });

function pistonOf(
  { closest }: ChangeDetail,
  floor: 'pocket' | 'flat' | undefined,
): ValveMargins['piston'] | undefined {
  if (closest === undefined) return undefined;
  const degrees = fromSi(closest.crankAngle, 'deg').value;
  return {
    lift: inches(closest.lift),
    gap: inches(closest.gap),
    ...defined({ floor }),
    atCrank: `${Math.abs(degrees).toFixed(0)}° ${degrees < 0 ? 'before' : 'after'} TDC`,
  };
}

const sideOf = ({ about }: ChangeDetail): Side =>
  about.of === 'valve' ? sideOfValve(about.valve) : about.of === 'side' ? about.valve : 'intake';

/** The limits of the gaps that are drawn. */
function limitsOf({ gaps }: ChangeDetail): ValveMargins['limits'] {
  const limit = (wanted: GapKind) => {
    const found = gaps.find(({ name }) => name === wanted)?.limit.value;
    return found === undefined ? undefined : inches(found);
  };
  return defined({
    bind: limit('coil-bind'),
    seal: limit('retainer-to-seal'),
    piston: limit('piston-to-valve'),
  });
}

/**
 * The valve drawn to scale, once the spring's height and the lift are known. Its gaps are those that are told of it: of two
 * springs the one that goes solid first, of a gap that was read what was read.
 */
export function marginsDrawing(
  { springs, clearances }: BuildSpec,
  detail: ChangeDetail,
): Drawing | undefined {
  const installedHeight = siIf(springs?.installedHeight);
  const lift = (name: 'net-lift' | 'gross-lift') =>
    detail.figures.find((each) => each.name === name)?.after?.value;
  // With no lash known the gaps are those at the most lift.
  const netLift = lift('net-lift') ?? lift('gross-lift');
  if (installedHeight === undefined || netLift === undefined || netLift >= installedHeight) return undefined;
  const told = (name: GapKind) => detail.gaps.find((gap) => gap.name === name);
  const left = (name: GapKind) => told(name)?.after?.value;
  const [bind, seal] = [left('coil-bind'), left('retainer-to-seal')];
  const data: ValveMargins = {
    installedHeight: inches(installedHeight),
    netLift: inches(netLift),
    noLashKnown: lift('net-lift') === undefined,
    ...defined({
      solidHeight: bind === undefined ? undefined : inches(installedHeight - netLift - bind),
      bindTitle: told('coil-bind')?.title,
      retainerToSeal: seal === undefined ? undefined : inches(seal + netLift),
      piston: pistonOf(detail, clearances?.[sideOf(detail)]?.pistonFloor),
      limits: limitsOf(detail),
    }),
  };
  return valveMargins(data, {
    id: `margins-${detail.key.replace(/[^a-z0-9]+/g, '-')}`,
    ruler: ruler(),
  });
}
