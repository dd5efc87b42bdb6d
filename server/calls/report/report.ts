import { CALLER_ROLES, CONTACT, ENGINE_STATES, GOALS } from '../../../shared/schemas/words.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import type { Slot } from '../../../views/parts/part.ts';
import { armsTable, swapsTable } from '../../builds/pages/parts-step.ts';
import type { Page } from '../../pages/render.ts';
import { holdOf } from '../pages/hold.ts';
import { dayText, momentText } from '../pages/moments.ts';
import { notesTable } from '../pages/notes-step.ts';
import type { Sight } from '../pages/sight.ts';
import { tapeOf } from '../pages/tape.ts';
import { sentence } from '../pages/tape-words.ts';
import { heading, setUpSection } from './set-up-section.ts';
import { specFacts } from './spec-facts.ts';

const CAUTIONS = [
  'The part maker’s figure and local codes go before every default here.',
  'Where something hit, bent, cracked or turns tight, or a limit is not met: stop, and have a qualified shop look.',
  'Turn by hand at the crank bolt only. Any resistance: stop, back off, find out.',
  'Error limits without a source are common practice, no published source. Fastener torque, bearing fit and grinding are the part maker’s or a qualified shop’s.',
];

function callFacts({ call, build }: Sight, now: Date): Fact[] {
  return [
    { label: 'Call', value: String(call.number) },
    { label: 'Build', value: build.label },
    { label: 'Build revision now', value: String(build.revision) },
    { label: 'Caller', value: call.callerName || 'not said', note: sentence(CALLER_ROLES, call.callerRole) },
    { label: 'Call back', value: call.callBack || 'not said' },
    { label: 'Goal', value: sentence(GOALS, call.goal) },
    { label: 'Engine', value: sentence(ENGINE_STATES, call.engineState) },
    { label: 'Contact', value: sentence(CONTACT, call.contact) },
    { label: 'Opened', value: dayText(call.openedAt) },
    {
      label: call.closedAt === undefined ? 'State' : 'Closed',
      value: call.closedAt === undefined ? 'open' : dayText(call.closedAt),
    },
    { label: 'Printed from the record', value: `${momentText(now)} UTC` },
  ];
}

function holdSlot(sight: Sight): Slot[] {
  const hold = holdOf(sight);
  if (hold === undefined) return [];
  const { lift: _, ...banner } = hold;
  return [{ template: '/parts/hold', data: banner }];
}

function buildSlots({ build }: Sight): Slot[] {
  const groups = specFacts(build.spec);
  if (groups.length === 0)
    return [{ template: '/parts/notice', data: { text: 'Nothing of the build is entered yet.' } }];
  const slots = groups.map(({ legend, facts }) => ({
    template: '/pages/call/facts-group',
    data: { title: legend, items: facts },
  }));
  return [{ template: '/pages/call/side-by-side', data: { slots } }];
}

/** The call as a sheet to print and keep, the tape on its back page. */
export function reportPage(sight: Sight, now: Date): Page {
  const { call, build } = sight;
  const title = `Call ${call.number}: ${build.label}`;
  return {
    template: 'report',
    title: `Report of call ${call.number}`,
    place: '/calls',
    data: {
      back: sight.base,
      title,
      facts: callFacts(sight, now),
      sections: [
        ...holdSlot(sight),
        ...sight.ratios.flatMap((found) => setUpSection(sight, found)),
        notesTable(sight.notes),
        armsTable(sight),
        ...(sight.placements.length > 1 ? [swapsTable(sight)] : []),
        heading(`The build as it stands, revision ${build.revision}`),
        ...buildSlots(sight),
        heading('Limits and cautions'),
        {
          template: '/pages/call/list',
          data: { title: 'Before anyone acts on this sheet', items: CAUTIONS },
        },
      ],
      tape: tapeOf(sight),
    },
  };
}
