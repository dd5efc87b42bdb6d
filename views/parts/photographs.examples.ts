import { HOSTILE, type Part } from './part.ts';

export interface PhotographsData {
  readonly photographs: readonly {
    readonly href: string;
    readonly width: number;
    readonly height: number;
    readonly alt: string;
    readonly shows: string;
    readonly caption: string;
    readonly who: string;
    readonly when: string;
  }[];
}

const PICTURE =
  'data:image/svg+xml,%3Csvg xmlns=%22http://www.w3.org/2000/svg%22 width=%22160%22 height=%22120%22%3E%3Crect width=%22160%22 height=%22120%22 fill=%22%23888%22/%3E%3C/svg%3E';

export const photographs: Part<'/parts/photographs'> = {
  name: 'photographs',
  title: 'Photographs',
  purpose: 'Shows what was photographed, with what to look at and whose it is.',
  template: '/parts/photographs',
  examples: [
    {
      title: 'One',
      data: {
        photographs: [
          {
            href: PICTURE,
            width: 160,
            height: 120,
            alt: 'What looks like a ratio on the part: left side',
            shows: 'What looks like a ratio on the part',
            caption: 'left side',
            who: 'Builder',
            when: '25 Nov, 10:42',
          },
        ],
      },
    },
    {
      title: 'Hostile text',
      data: {
        photographs: [
          {
            href: PICTURE,
            width: 160,
            height: 120,
            alt: HOSTILE,
            shows: 'The part',
            caption: HOSTILE,
            who: HOSTILE,
            when: '25 Nov, 10:42',
          },
        ],
      },
    },
  ],
};
