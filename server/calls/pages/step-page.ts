import type { Slot } from '../../../views/parts/part.ts';
import type { Page } from '../../pages/render.ts';
import { type Again, errorsOf, formSlot, type StepBody } from './forms-on-page.ts';
import { holdOf, stopForm } from './hold.ts';
import { missingOf } from './missing.ts';
import { followingStep } from './needs.ts';
import type { Sight } from './sight.ts';
import { STEP_NAMES, STEPS, type StepName } from './steps.ts';
import { tapeOf } from './tape.ts';

function pagerOf(sight: Sight, step: StepName, screens: StepBody['screens']): Slot {
  const before = STEP_NAMES[STEP_NAMES.indexOf(step) - 1];
  const after = followingStep(step);
  const link = (to: StepName) => ({ href: `${sight.base}/steps/${to}`, label: STEPS[to].link });
  return {
    template: '/parts/pager',
    data: {
      label: 'Steps',
      ...(before === undefined ? {} : { previous: link(before) }),
      ...(after === undefined ? {} : { next: link(after) }),
      ...screens,
    },
  };
}

/** What is asked at the desk, or how it is done at the bench. */
function wordsFor(sight: Sight, words: { say: string; how: string }): { say?: string; how?: string } {
  return sight.side === 'desk' ? { say: words.say } : { how: words.how };
}

/** A step in the frame of its side: missing, step and tape at the desk; one step and the tape at the bench. */
export function stepPage(
  sight: Sight,
  at: { readonly step: StepName; readonly title?: string; readonly position?: string },
  body: StepBody,
  again: Again | undefined,
): Page {
  const stop = stopForm(sight);
  const hold = holdOf(sight);
  const title = at.title ?? STEPS[at.step].title;
  // A page beside the steps has its own business; what the step asks does not stand on it.
  const { say, how } = at.title === undefined ? wordsFor(sight, body.words ?? STEPS[at.step]) : {};
  const header: Slot = {
    template: '/parts/step-header',
    data: {
      title,
      position: at.position ?? `Call ${sight.call.number}, ${sight.build.label}`,
      ...(say === undefined ? {} : { say }),
    },
  };
  const guide: Slot[] = how === undefined ? [] : [{ template: '/parts/notice', data: { text: how } }];
  const step = [
    header,
    ...guide,
    ...body.slots,
    ...(sight.side === 'bench' ? [pagerOf(sight, at.step, body.screens)] : []),
    ...(sight.call.held ? [] : [formSlot(stop, again)]),
  ];
  return {
    template: 'call',
    title: `${title}, call ${sight.call.number}`,
    place: '/calls',
    live: {
      stream: sight.side === 'desk' ? `/live/calls/${sight.call.id}` : '/live/bench',
      steps: `${sight.base}/steps`,
      step: at.step,
      seq: sight.build.version,
    },
    data: {
      errors: errorsOf([...body.forms, stop], again),
      side: sight.side,
      links: linksOf(sight),
      missing: missingOf(sight, at.step),
      step,
      tape: tapeOf(sight),
      ...(hold === undefined ? {} : { hold }),
    },
  };
}

/** What can be done with the call beside its steps. */
function linksOf({
  base,
  side,
  call,
}: Sight): { href: string; label: string; key?: string; stop?: boolean }[] {
  const both = [
    ...(call.held ? [] : [{ href: '#stop', label: 'Stop: nobody turns it', key: 'x', stop: true }]),
    { href: `${base}/report`, label: 'Report', key: 'r' },
    { href: `${base}/worksheet`, label: 'Worksheet', key: 'w' },
    { href: `${base}/photographs`, label: 'Photographs', key: 'p' },
  ];
  if (side === 'bench') return both;
  return [
    ...both,
    { href: `${base}/takeover`, label: 'Takeover card', key: 'o' },
    { href: `${base}/share`, label: 'Share with the builder', key: 'b' },
    { href: `${base}/export.json`, label: 'Export as JSON' },
    { href: `${base}/close`, label: 'Close the call' },
  ];
}
