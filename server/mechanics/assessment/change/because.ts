import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import type { ScanMoved } from '../../consequences/scan-gap.ts';
import { nearSaid } from '../../gap-scan/words.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, placeOf, ratioSaid } from '../common/said.ts';
import type { GapName } from '../evidence.ts';
import { bendIn } from '../gaps/gap-bend.ts';
import type { ChangeGap } from './detail.ts';
import type { GapsAsked } from './worked-gap.ts';

function movedSaid(moved: ScanMoved | undefined): string[] {
  if (moved === undefined) return [];
  return [
    `estimated from the scan: at each crank angle the lobe’s lift there times what the ratio changes; the least then lies ${nearSaid(moved.after.crankAngle)}, it was read ${nearSaid(moved.before.crankAngle)}`,
  ];
}

/** The arm was read otherwise, and it is not known yet which of the two is so: what the reading would leave. */
function readSaid(name: GapName, { denied, asRead, about }: GapsAsked): string[] {
  const read = denied?.asRead;
  if (denied === undefined || read === undefined) return [];
  const gap = asRead?.(name);
  const leaves = gap === undefined ? '' : `: with that it would be ${gapSaid(gap)}`;
  const arm = about.of === 'valve' ? 'the arm' : placeOf(denied);
  return [`${arm} reads ${ratioSaid(read.value)}${read.orMore ? ' or more' : ''} as it stands${leaves}`];
}

/** What a calculated gap is made of, and what it allows for. */
export function becauseOf(name: GapName, asked: GapsAsked, word: ChangeGap['word']): string[] {
  const judged = asked.before.find(({ entry }) => entry.kind === name);
  const from = judged?.entry;
  return [
    ...(from === undefined
      ? []
      : [
          `calculated from ${asEntered(from.readAs)}, read with the arms ${from.otherArms === 'on-now' ? 'that are on now' : from.otherArms === 'off-since' ? 'that are off since' : 'before'}, and what the ratio changes`,
        ]),
    ...(judged?.apart === undefined ? [] : [judged.apart]),
    ...readSaid(name, asked),
    ...(name === 'piston-to-valve' ? movedSaid(asked.moved) : []),
    ...(name === 'piston-to-valve' && word !== undefined
      ? ['it is calculated: measure it before it runs']
      : []),
    ...(from !== undefined && bendIn(from, asked.evidence) > 0
      ? [
          `the gap was read on ${from.spring === 'running' ? 'the running spring' : 'a spring that nobody named'}: up to ${inches(bendIn(from, asked.evidence))} is taken off for what bends`,
        ]
      : []),
    ...(asked.bend > 0
      ? [
          `the ratio was read on the running spring: up to ${inches(asked.bend)} of lift is allowed for what bends`,
        ]
      : []),
  ];
}
