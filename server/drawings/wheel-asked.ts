import { inSpoken } from '../../shared/quantities/authored.ts';
import { arc, type Spoke, spokes, wheel } from './degree-wheel.ts';
import type { Drawing } from './drawing.ts';
import { label } from './svg.ts';

const sheet = (
  id: string,
  data: {
    readonly title: string;
    readonly desc: string;
    readonly arcs: string;
    readonly spokes: readonly Spoke[];
    readonly lines: readonly string[];
  },
): Drawing => ({
  id,
  title: data.title,
  desc: data.desc,
  viewBox: `0 0 320 ${268 + 18 * data.lines.length}`,
  svg:
    wheel() +
    data.arcs +
    spokes(data.spokes) +
    data.lines
      .map((text, index) => label(160, 278 + 18 * index, text, { anchor: 'middle', soft: true }))
      .join(''),
  toScale: false,
});

/** The two readings at the stop, before they are taken. */
export const wheelAtStop = (id: string): Drawing =>
  sheet(id, {
    title: 'The two readings at the stop',
    desc: 'On the wheel the stop is met at so many degrees before the top turning one way, and at so many after it turning the other. True top dead centre is midway between the two; where they differ the pointer is off by half the difference.',
    arcs: arc('draw-outline', -37, 0, 64) + arc('draw-outline', 0, 37, 64),
    spokes: [
      { at: -37, name: 'before top', figure: 'read here' },
      { at: 37, name: 'after top', figure: 'and here' },
      { at: 0, name: '', figure: '', moving: true },
    ],
    lines: ['read from the pointer’s zero on each side', 'alike on both sides: the pointer stands right'],
  });

/** Where a valve opens and closes, as the trade tells it, before anything is read. */
export function wheelEvents(id: string, side: 'intake' | 'exhaust'): Drawing {
  const [from, to] = side === 'intake' ? [-20, 215] : [130, 375];
  const told = side === 'intake' ? ['BTDC or ATDC', 'ABDC or BBDC'] : ['BBDC or ABDC', 'ATDC or BTDC'];
  const [opens = '', closes = ''] = told;
  return sheet(id, {
    title: `Where the ${side} opens and closes`,
    desc: `The ${side} opens, told in degrees ${opens}, and closes, told in degrees ${closes}, both with the lifter at the same rise, usually ${inSpoken('.050 in')}. The arc between is the duration.`,
    arcs: arc('draw-outline', from, to, 64),
    spokes: [
      { at: from, name: 'opens', figure: opens.replace(' or ', '/'), moving: true },
      { at: to, name: 'closes', figure: closes.replace(' or ', '/'), moving: true },
    ],
    lines: [inSpoken('lifter at .050 both times, crank turns clockwise')],
  });
}
