import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import type { PartIdentification } from '../../assessment/identification/identification.ts';
import type { CallContext } from '../../call/context.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import { isMark, nextOfPart } from './report.ts';

const NAMES: Readonly<Record<string, string>> = PART_KINDS;
const BOLTED = { 'through-centre': 'bolted through its centre', perimeter: 'bolted round the edge' };

/** Marks and sizes as they were read; what would separate the first two families; the cover. */
export function partItems(context: CallContext, part: PartIdentification): TakeoverItem[] {
  const { cover, coverBolting } = part;
  const marks = part.standing.filter(isMark);
  const sizes = part.standing.filter((each) => !isMark(each));
  const read = sizes.map((each) => `${(NAMES[each.kind] ?? each.kind).toLowerCase()} ${each.readAs}`);
  return [
    ...marks.map(
      (each): TakeoverItem => ({
        card: 'marks',
        label: 'Part in the hand:',
        text: `${each.kind.replaceAll('-', ' ')} “${each.readAs}”`,
        ...(each.place === '' ? {} : { note: each.place }),
      }),
    ),
    ...(read.length === 0
      ? []
      : [{ card: 'raw' as const, label: 'Part in the hand:', text: read.join('; ') }]),
    {
      card: 'of-goal',
      label: 'Would separate the first two:',
      text: (part.standing.length === 0 ? undefined : nextOfPart(context, part)) ?? NOT_YET,
    },
    {
      card: 'of-goal',
      label: 'Cover:',
      text: coverBolting === undefined ? NOT_YET : BOLTED[coverBolting],
      ...(cover === undefined ? {} : { note: `sideways ${cover.verdict}; height by clay` }),
    },
  ];
}
