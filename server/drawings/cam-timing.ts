import { formatNumber } from '../../shared/quantities/format.ts';
import { arc, spokes, wheel } from './degree-wheel.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { label } from './svg.ts';

/** Crank degrees, as in the answer: opens BTDC and BBDC, closes ABDC and ATDC, negative on the other side. */
interface CamTiming {
  readonly intakeOpens: number;
  readonly intakeCloses: number;
  readonly exhaustOpens: number;
  readonly exhaustCloses: number;
  readonly intakeDuration: number;
  readonly exhaustDuration: number;
  readonly overlap: number;
}

const OTHER = { BTDC: 'ATDC', ATDC: 'BTDC', BBDC: 'ABDC', ABDC: 'BBDC' } as const;

const figure = (value: number) =>
  formatNumber(Number(value.toFixed(1)), Number.isInteger(Number(value.toFixed(1))) ? 0 : 1);

/** An event the way it is said: a negative one is told from the other side. */
function said(value: number, side: keyof typeof OTHER): string {
  return value < 0 ? `${figure(-value)} ${OTHER[side]}` : `${figure(value)} ${side}`;
}

/** The four events on a degree wheel, each lobe's opening as an arc from its opening to its closing. */
export function camTiming(data: CamTiming, { id }: DrawnFor): Drawing {
  const intake = { opens: said(data.intakeOpens, 'BTDC'), closes: said(data.intakeCloses, 'ABDC') };
  const exhaust = { opens: said(data.exhaustOpens, 'BBDC'), closes: said(data.exhaustCloses, 'ATDC') };
  const intakeFrom = -data.intakeOpens;
  const exhaustFrom = 180 - data.exhaustOpens;
  return {
    id,
    title: 'Valve events on the degree wheel',
    desc: `Intake opens ${intake.opens} and closes ${intake.closes}; exhaust opens ${exhaust.opens} and closes ${exhaust.closes}; both are open for ${figure(data.overlap)} degrees.`,
    viewBox: '0 0 320 292',
    svg:
      wheel() +
      arc('draw-moving', intakeFrom, intakeFrom + data.intakeDuration, 72) +
      arc('draw-outline', exhaustFrom, exhaustFrom + data.exhaustDuration, 60) +
      spokes(
        [
          { at: intakeFrom, name: 'IO', figure: intake.opens, moving: true },
          { at: 180 + data.intakeCloses, name: 'IC', figure: intake.closes, moving: true },
          { at: exhaustFrom, name: 'EO', figure: exhaust.opens },
          { at: data.exhaustCloses, name: 'EC', figure: exhaust.closes },
        ],
        52,
      ) +
      label(160, 150, `intake ${figure(data.intakeDuration)}°`, {
        anchor: 'middle',
        className: 'draw-text-moving',
      }) +
      label(160, 168, `exhaust ${figure(data.exhaustDuration)}°`, { anchor: 'middle' }) +
      label(160, 18, `overlap ${figure(data.overlap)}°`, { anchor: 'middle', soft: true }) +
      label(160, 284, 'crank turns clockwise, seen from the front', { anchor: 'middle', soft: true }),
    toScale: true,
    table: {
      caption: 'Valve events, crank degrees',
      columns: [
        { label: 'Valve' },
        { label: 'Opens', number: true },
        { label: 'Closes', number: true },
        { label: 'Open for', number: true },
      ],
      rows: [
        { cells: ['Intake', intake.opens, intake.closes, figure(data.intakeDuration)] },
        { cells: ['Exhaust', exhaust.opens, exhaust.closes, figure(data.exhaustDuration)] },
      ],
    },
  };
}
