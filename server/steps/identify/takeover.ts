import { asEntered, asTold } from '../../../shared/quantities/as-entered.ts';
import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import type { CallContext } from '../../call/context.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import { upperFirst } from '../../mechanics/assessment/common/said.ts';
import { tellText } from './answers.ts';
import { isMark, type PartSeen } from './of-part.ts';

const NAMES: Readonly<Record<string, string>> = PART_KINDS;
const BOLTED = { 'through-centre': 'bolted through its centre', perimeter: 'bolted round the edge' };

/** Marks and sizes as they were read; what would separate the first two families; the cover. */
export function partItems({ build }: CallContext, part: PartSeen): TakeoverItem[] {
  const { ranking, detail } = part;
  const { cover, about } = detail;
  const label = about.name === undefined ? 'Part in the hand:' : `${upperFirst(about.name)}:`;
  const named = about.name === undefined ? '' : `${about.name} `;
  const coverBolting = build.spec.engine?.coverBolting;
  const marks = part.standing.filter(isMark);
  const sizes = part.standing.filter((each) => !isMark(each));
  const hows = [...new Set(sizes.map(({ how }) => how))];
  const read = hows.map((how) => {
    const these = sizes.filter((each) => each.how === how);
    const texts = these.map(
      (each) => `${(NAMES[each.kind] ?? each.kind).toLowerCase()} ${asEntered(each.readAs)}`,
    );
    return `${texts.join('; ')}${how === '' ? '' : ` (${asTold(how)})`}`;
  });
  return [
    ...marks.map(
      (each): TakeoverItem => ({
        card: 'marks',
        label,
        text: `${each.kind.replaceAll('-', ' ')} “${asEntered(each.readAs)}”`,
        ...(each.place === '' ? {} : { note: each.place }),
      }),
    ),
    ...(read.length === 0 ? [] : [{ card: 'raw' as const, label, text: read.join('; ') }]),
    {
      card: 'of-goal',
      label:
        about.name === undefined
          ? 'Would separate the first two:'
          : `Would separate the first two, ${about.name}:`,
      text: ranking === undefined ? NOT_YET : tellText(ranking),
    },
    {
      card: 'of-goal',
      label: 'Cover:',
      text: coverBolting === undefined ? NOT_YET : BOLTED[coverBolting],
      ...(cover === undefined ? {} : { note: `${named}sideways ${cover.word}; height by clay` }),
    },
  ];
}
