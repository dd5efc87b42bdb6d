import { asEntered } from '../../../shared/quantities/as-entered.ts';
import type { Component } from '../../../views/parts/components.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { readingWords } from '../../call/reading-text.ts';
import { sectionComponent } from '../../call/report-parts.ts';
import { SHOWS } from '../../records/photographs/new-photograph.ts';
import type { Photograph } from '../../records/photographs/photographs.ts';
import { momentText } from '../../web/dates.ts';

/** As many as fit on half a sheet; the others stay in the record. */
const MOST = 8;

const WORDS: Readonly<Record<string, string>> = SHOWS;

export const showsText = ({ shows }: Photograph): string => WORDS[shows] ?? shows;

/** `Proves line 14: valve lift, pass 1, 1 intake, .847 in`; the arm it shows by its name. */
export function provesText(context: CallContext, { readingId, armId }: Photograph): string {
  const reading = context.readings.find(({ id }) => id === readingId);
  const setUp = context.setUps.find(({ id }) => id === reading?.setUpId);
  const arm = context.arms.find(({ id }) => id === armId);
  const proof =
    reading === undefined
      ? []
      : [
          `Proves line ${reading.seq}: ${readingWords(reading).toLowerCase()}${setUp === undefined ? '' : `, ${valveName(setUp)}`}, ${asEntered(reading.peak.readAs)}`,
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
export function photographsReport(context: CallContext): Component[] {
  const { photographs } = context;
  if (photographs.length === 0) return [];
  const shown = printed(photographs);
  const left = photographs.length - shown.length;
  return [
    sectionComponent('Photographs', [
      {
        template: '/pages/report/photographs',
        data: {
          photographs: shown.map((each) => ({
            src: `${context.base}/photographs/${each.id}`,
            width: each.width,
            height: each.height,
            alt: each.caption === '' ? showsText(each) : `${showsText(each)}: ${each.caption}`,
            shows: showsText(each),
            caption: each.caption,
            proves: provesText(context, each),
            who: `${each.by}, ${momentText(each.at)}, line ${each.seq}`,
          })),
          ...(left === 0 ? {} : { more: `${left} more in the record, under Photographs.` }),
        },
      },
    ]),
  ];
}
