import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { LASH_STATES, LIFTERS, READING_KINDS, RESTS_ON, SPRINGS } from '../../../shared/schemas/words.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { type ShownSetUp, shownSetUps } from '../../call/shown-set-up.ts';
import { listed, type TakeoverItem } from '../../call/takeover-items.ts';
import { inches } from '../../mechanics/assessment/common/said.ts';
import type { SetUpDetail } from '../../mechanics/assessment/ratio/read/detail.ts';
import type { Reading } from '../../records/readings/readings.ts';

const OUT = 'in no figure';

/** A pass as it was read; one that was struck or replaced in brackets with the reason, and so one that is in no figure. */
function passText(reading: Reading, all: readonly Reading[], { passes }: SetUpDetail): string {
  const later = all.find(({ id }) => id === reading.replacedBy);
  const text = asEntered(reading.peak.readAs);
  if (later !== undefined) return `(${text}: ${later.reason})`;
  const aside = passes.find(({ entryId }) => entryId === reading.id)?.aside;
  return aside === undefined ? text : `(${text}: ${OUT})`;
}

const KINDS: Readonly<Record<string, string>> = READING_KINDS;

/** `lobe lift .350, .350 in; valve lift (.460: one turn missed), .560 in` */
export function passesText({ readings: all }: CallContext, { readings, detail }: ShownSetUp): string {
  const read = readings.filter((each) => !each.struck);
  const kinds = [...new Set(read.map(({ kind }) => kind))];
  const texts = kinds.map((kind) => {
    const passes = read.filter((each) => each.kind === kind).map((each) => passText(each, all, detail));
    return `${(KINDS[kind] ?? kind).toLowerCase()} ${listed(passes)}`;
  });
  return texts.length === 0 ? 'no pass yet' : texts.join('; ');
}

/** `light checking spring, solid lifter, lash set to its running lash, .016 in, plunger leaning`: all that was said. */
function howRead({ spring, lifter, lash, lashSetting, restsOn, alignment }: SetUpDetail['setUp']): string {
  const facts = [
    SPRINGS[spring],
    LIFTERS[lifter],
    `lash ${LASH_STATES[lash]}`,
    ...(lashSetting === undefined ? [] : [inches(lashSetting)]),
    ...(restsOn === 'not-said' ? [] : [`tip on ${RESTS_ON[restsOn]}`]),
    ...(alignment === 'not-said' ? [] : [`plunger ${alignment}`]),
  ];
  return facts.join(', ').toLowerCase();
}

/** Why a pass is in no figure, in the words of the assessment. */
export const asidesOf = ({ passes }: SetUpDetail): string[] =>
  passes.flatMap((pass) => pass.aside?.sentence ?? []);

function ofSetUp(context: CallContext, found: ShownSetUp): TakeoverItem {
  const { setUp, detail } = found;
  return {
    card: 'raw',
    label: `${valveName(setUp)}, set-up ${setUp.number}:`,
    text: passesText(context, found),
    note: [howRead(detail.setUp), ...asidesOf(detail)].join('. '),
  };
}

/** Every pass of every set-up, with why one is in no figure. */
export const rawPasses = (context: CallContext): TakeoverItem[] =>
  shownSetUps(context).map((found) => ofSetUp(context, found));
