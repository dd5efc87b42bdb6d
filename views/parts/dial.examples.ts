import type { ButtonData } from './button.examples.ts';
import type { DrawingData } from './drawing.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE } from './part.ts';

export interface DialData {
  readonly id: string;
  readonly heading?: string;
  readonly drawing: DrawingData;
  readonly reading: string;
  /** The field whose entry it shows while it is typed: from where, which way, and how its face is numbered. */
  readonly follows?: {
    readonly field: string;
    readonly runs: 'clockwise' | 'anticlockwise';
    /** Inches: what a turn makes, and what the hand has gone as it is drawn. */
    readonly perTurn: number;
    readonly gone: number;
    /** Where the small hand stood at zero, in turns. */
    readonly startedAt?: number;
    readonly unit: 'in' | 'mm';
    readonly speaks: 'inch' | 'metric';
  };
  readonly answers?: readonly ButtonData[];
}

const point = (turn: number, radius: number) => {
  const angle = turn * 2 * Math.PI;
  return `${(100 + radius * Math.sin(angle)).toFixed(1)} ${(100 - radius * Math.cos(angle)).toFixed(1)}`;
};

function face(needle: number): string {
  const ticks = Array.from({ length: 50 }, (_, index) => {
    const inner = index % 5 === 0 ? 74 : 80;
    return `M${point(index / 50, inner)}L${point(index / 50, 86)}`;
  }).join('');
  const figures = Array.from({ length: 10 }, (_, index) => {
    const [x, y] = point(index / 10, 62).split(' ');
    return `<text class="draw-text" text-anchor="middle" dy="5" x="${x}" y="${y}">${index * 10}</text>`;
  }).join('');
  return `<circle class="draw-outline" cx="100" cy="100" r="92"/><path class="draw-behind" d="${ticks}"/>${figures}<path class="draw-moving" d="M${point(needle + 0.5, 16)}L${point(needle, 84)}"/><circle class="draw-solid" cx="100" cy="100" r="5"/>`;
}

const drawn = (id: string): DrawingData => ({
  id,
  title: 'Dial at full lift',
  desc: 'The needle stands at 66 after five whole turns.',
  viewBox: '0 0 200 200',
  svg: face(0.66),
  toScale: true,
  caption: '.100 in a turn, hand runs clockwise',
});

export const dial: Part<'/parts/dial'> = {
  name: 'dial',
  title: 'Dial',
  purpose: 'The instrument as it should look, so that a turn miscounted or a hand read backwards shows.',
  template: '/parts/dial',
  examples: [
    {
      title: 'To compare with the real one',
      data: {
        id: 'dial-lift',
        drawing: drawn('dial-lift-drawing'),
        reading: '5 turns 66 = .566 in',
        answers: [
          { label: 'Mine looks like this', kind: 'primary', type: 'button' },
          { label: 'Mine looks different', type: 'button' },
        ],
      },
    },
    {
      title: 'Hostile text',
      data: {
        id: 'dial-hostile',
        heading: HOSTILE,
        drawing: { ...drawn('dial-hostile-drawing'), title: HOSTILE, desc: HOSTILE, caption: HOSTILE },
        reading: HOSTILE,
      },
    },
  ],
};
