import { levelDimension, uprightDimension } from './dimension.ts';
import type { Drawing } from './drawing.ts';
import { circle, label, line, path } from './svg.ts';

/** An adjustable checking pushrod: what it measures screwed together, and what its turns add. */
export function checkerAsked(id: string): Drawing {
  return {
    id,
    title: 'A checking pushrod',
    desc: 'A pushrod in two halves on a thread. Screwed together until the halves touch it has its length at zero; each turn out makes it longer by the pitch of its thread. The length that fits is zero and turns; it is read over the ends.',
    viewBox: '0 0 320 160',
    svg:
      path('draw-outline', 'M30 70H132V90H30A10 10 0 0 1 30 70Z') +
      path('draw-moving', 'M176 70H290A10 10 0 0 1 290 90H176Z') +
      path('draw-behind', 'M132 75H176V85H132M140 75L144 85M148 75L152 85M156 75L160 85M164 75L168 85') +
      line('draw-centre', 14, 80, 306, 80) +
      levelDimension({ y: 46, from: 132, to: 176, text: 'turns × thread', outline: 70 }) +
      levelDimension({ y: 124, from: 20, to: 300, text: 'checker at zero + turns', outline: 90 }) +
      label(160, 152, 'preload is added, lash taken off', { anchor: 'middle', soft: true }),
    toScale: false,
    caption: 'Thin: the half that stays. Thick: the half that is screwed out',
  };
}

/** The two heights that place a stand: pivot and stem’s end, over one face, along the valve. */
export function standAsked(id: string): Drawing {
  return {
    id,
    title: 'Two heights over one face',
    desc: 'Valve shut. From one face of the head, along the valve: the height of the pivot’s middle, and the height of the stem’s end. The roller stands on the stem’s end, so its middle is one radius higher.',
    viewBox: '0 0 320 230',
    svg:
      line('draw-outline', 20, 190, 300, 190) +
      path('draw-outline', 'M82 190V98H106V190') +
      circle('draw-outline', 94, 72, 26) +
      circle('draw-moving', 214, 118, 9) +
      line('draw-behind', 94, 72, 214, 118) +
      path('draw-behind', 'M196 190V136H232V190') +
      uprightDimension({ x: 52, from: 98, to: 190, text: '2', outline: 82, side: 'end' }) +
      uprightDimension({ x: 262, from: 118, to: 190, text: '1', outline: 232 }) +
      label(94, 40, 'roller', { anchor: 'middle', soft: true }) +
      label(214, 100, 'pivot', { anchor: 'middle', soft: true }) +
      label(160, 216, '1: pivot’s middle   2: stem’s end', { anchor: 'middle' }),
    toScale: false,
    caption: 'Both from one face, along the valve, with the valve shut',
  };
}
