import { CONTACT, ENGINE_STATES, GOALS } from '../../../shared/schemas/words.ts';
import type { Slot } from '../../../views/parts/part.ts';
import { armsTable, swapsTable } from '../../builds/pages/parts-step.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import type { Page } from '../../pages/render.ts';
import { listPhotographs } from '../../photographs/photographs.ts';
import { passesTable } from '../../readings/pages/passes-table.ts';
import { resultOf } from '../../readings/pages/ratio-answer.ts';
import { holdOf } from './hold.ts';
import { needsOf, nextStep } from './needs.ts';
import { notesTable } from './notes-step.ts';
import { lookAt, type Sight, valveName } from './sight.ts';
import { STEP_NAMES, STEPS } from './steps.ts';
import { sentence } from './tape-words.ts';

function callFacts(sight: Sight): Slot {
  const { call, build } = sight;
  const next = nextStep(sight);
  return {
    template: '/parts/facts',
    data: {
      block: true,
      items: [
        { label: 'Caller', value: call.callerName || 'not said', note: call.callBack },
        { label: 'Goal', value: sentence(GOALS, call.goal) },
        {
          label: 'Engine',
          value: sentence(ENGINE_STATES, call.engineState),
          note: sentence(CONTACT, call.contact),
        },
        { label: 'Build', value: build.label, note: `revision ${build.revision}` },
        { label: 'Next', value: STEPS[next.step].link, note: next.why },
      ],
    },
  };
}

/** What the answer still waits for, step by step; the rest is in the call itself. */
function missingSlot(sight: Sight): Slot {
  const items = STEP_NAMES.flatMap((step) =>
    needsOf(step, sight)
      .filter((need) => need.must && !need.have)
      .map((need) => `${STEPS[step].link}: ${need.text}`),
  );
  return {
    template: '/pages/call/list',
    data: {
      title: 'What is missing',
      items: items.length === 0 ? ['Nothing that the answer waits for.'] : items,
    },
  };
}

/** The call on one screen, for a colleague who takes it over. */
export async function takeoverPage(tx: Tx, given: PageRequest): Promise<Page> {
  const sight = await lookAt(tx, given);
  const photographs = await listPhotographs(tx, sight.caller, sight.build.id);
  const hold = holdOf(sight);
  const results = sight.ratios.map((found) => ({
    template: '/parts/result',
    data: resultOf(found, `ratio-${found.setUp.number}`),
  }));
  const passes = sight.ratios.map((found) =>
    passesTable(
      found.readings,
      `Passes, ${valveName(found.setUp)}, set-up ${found.setUp.number}`,
      (reading) => `${sight.base}/readings/${reading.id}`,
    ),
  );
  const pictures: Slot = {
    template: '/parts/notice',
    data: {
      text: photographs.length === 0 ? 'No photograph yet.' : `${photographs.length} photographs.`,
      link: { href: `${sight.base}/photographs`, label: 'Look at the photographs' },
    },
  };
  return {
    template: 'plain',
    title: `Take over call ${sight.call.number}`,
    place: '/calls',
    data: {
      title: `Take over call ${sight.call.number}`,
      intro: 'All that a colleague needs to go on, on one screen.',
      sections: [
        ...(hold === undefined ? [] : [{ template: '/parts/hold', data: hold }]),
        callFacts(sight),
        missingSlot(sight),
        ...results,
        notesTable(sight.notes),
        armsTable(sight),
        ...(sight.placements.length > 1 ? [swapsTable(sight)] : []),
        pictures,
        ...passes,
        {
          template: '/parts/button',
          data: { label: 'Go on with this call', href: sight.base, kind: 'primary', key: 'n' },
        },
      ],
    },
  };
}
