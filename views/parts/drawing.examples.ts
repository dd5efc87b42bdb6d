import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';
import type { TableData } from './table.examples.ts';

export interface DrawingData {
  readonly id: string;
  readonly title: string;
  /** The drawing in words, for whoever cannot see it. */
  readonly desc: string;
  readonly viewBox: string;
  /** Inner markup from our own drawing code, which escapes every text it puts in. */
  readonly svg: string;
  readonly toScale: boolean;
  readonly caption?: string;
  readonly table?: TableData;
  readonly wide?: boolean;
}

/** A spring between its seat and the retainer, closed, with the gap to the seal dimensioned. */
const retainer = `
<path d="M40 190H280V206H40Z" fill="url(#hatch-cut)"/>
<path class="draw-outline" d="M40 190H280"/>
<path class="draw-behind" d="M112 190V70M208 190V70M120 172L200 160M120 148L200 136M120 124L200 112M120 100L200 88"/>
<path class="draw-outline" d="M142 190V150H178V190"/>
<path class="draw-moving" d="M100 54H220V68H182V84H138V68H100Z"/>
<path class="draw-centre" d="M160 28V206"/>
<path class="draw-dim" d="M184 84H252M184 150H252"/>
<path class="draw-dim" d="M244 84V150" marker-start="url(#arrow)" marker-end="url(#arrow)"/>
<text class="draw-text" x="252" y="121">.548</text>
<text class="draw-text draw-text-soft" x="16" y="66">retainer</text>
<text class="draw-text draw-text-soft" x="16" y="166">seal</text>`;

export const drawing: Part<'/parts/drawing'> = {
  name: 'drawing',
  title: 'Drawing',
  purpose: 'Shows where the tool goes or how much room is left, and says whether it is to scale.',
  template: '/parts/drawing',
  examples: [
    {
      title: 'To scale, with its table',
      data: {
        id: 'drawing-retainer',
        title: 'Retainer to seal, valve closed',
        desc: 'The underside of the retainer stands .548 in above the top of the seal.',
        viewBox: '0 0 320 220',
        svg: retainer,
        toScale: true,
        table: {
          caption: 'Retainer to seal',
          columns: [{ label: 'Where' }, { label: 'Gap, in', number: true }],
          rows: [{ cells: ['Closed', '.548'] }, { cells: ['Full lift', '.050'] }],
        },
      },
    },
    {
      title: 'Not to scale',
      data: {
        id: 'drawing-loose',
        title: 'Where the plunger goes',
        desc: 'The plunger stands on the flat of the retainer, in line with the valve stem.',
        viewBox: '0 0 320 220',
        svg: '<path class="draw-outline" d="M100 140H220V156H100Z"/><path class="draw-moving" d="M190 138V60M178 60H202V24H178Z"/><path class="draw-centre" d="M160 20V200"/><text class="draw-text" x="212" y="48">plunger</text>',
        toScale: false,
      },
    },
    {
      title: 'Long and hostile text',
      data: {
        id: 'drawing-hostile',
        title: HOSTILE,
        desc: HOSTILE,
        viewBox: '0 0 320 40',
        svg: '<path class="draw-outline" d="M10 20H310"/>',
        toScale: false,
        caption: `${LONG} ${HOSTILE}`,
      },
    },
  ],
};
