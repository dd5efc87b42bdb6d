import type { Slot } from '../../../../views/parts/part.ts';
import { type Photograph, SHOWS } from '../../../photographs/photographs.ts';
import { readingWords } from '../../../readings/pages/passes-table.ts';
import { momentText } from '../../pages/moments.ts';
import { type Sight, valveName } from '../../pages/sight.ts';
import { section } from '../slots.ts';
import type { Whole } from '../whole.ts';

/** As many as fit on half a sheet; the others stay in the record. */
const MOST = 8;

const WORDS: Readonly<Record<string, string>> = SHOWS;

export const showsText = ({ shows }: Photograph): string => WORDS[shows] ?? shows;

/** `Proves line 14: valve lift, pass 1, 1 intake, .847 in`; the arm it shows by its name. */
export function provesText(sight: Sight, { readingId, armId }: Photograph): string {
  const reading = sight.readings.find(({ id }) => id === readingId);
  const setUp = sight.setUps.find(({ id }) => id === reading?.setUpId);
  const arm = sight.arms.find(({ id }) => id === armId);
  const proof =
    reading === undefined
      ? []
      : [
          `Proves line ${reading.seq}: ${readingWords(reading).toLowerCase()}${setUp === undefined ? '' : `, ${valveName(setUp)}`}, ${reading.peak.readAs}`,
        ];
  return [...proof, ...(arm === undefined ? [] : [`Shows ${arm.name}`])].join('. ');
}

/** What proves something comes before what only shows something; within that, in order. */
function printed(photographs: readonly Photograph[]): Photograph[] {
  const proof = ({ readingId, armId }: Photograph) => (readingId ?? armId) !== undefined;
  const chosen = new Set(
    [...photographs.filter(proof), ...photographs.filter((each) => !proof(each))].slice(0, MOST),
  );
  return photographs.filter((each) => chosen.has(each));
}

/** The photographs small, each with what it proves, by whom and when. */
export function photographsSection({ sight, photographs }: Whole): Slot[] {
  if (photographs.length === 0) return [];
  const shown = printed(photographs);
  const left = photographs.length - shown.length;
  return [
    section('Photographs', [
      {
        template: '/pages/report/photographs',
        data: {
          photographs: shown.map((each) => ({
            src: `${sight.base}/photographs/${each.id}`,
            width: each.width,
            height: each.height,
            alt: each.caption === '' ? showsText(each) : `${showsText(each)}: ${each.caption}`,
            shows: showsText(each),
            caption: each.caption,
            proves: provesText(sight, each),
            who: `${each.by}, ${momentText(each.at)}, line ${each.seq}`,
          })),
          ...(left === 0 ? {} : { more: `${left} more in the record, under Photographs.` }),
        },
      },
    ]),
  ];
}
