import type { Slot } from '../../../views/parts/part.ts';
import type { Again, PageForm, StepBody } from '../../calls/pages/forms-on-page.ts';
import { formSlot } from '../../calls/pages/forms-on-page.ts';
import { momentText } from '../../calls/pages/moments.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { drawingsOf } from '../../drawings/registry.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { answerSlots } from '../../reference/answer/answer-slots.ts';
import { controlsOf } from '../../reference/form/controls-of.ts';
import { leavesOf } from '../../reference/form/leaves.ts';
import { formGroups } from '../../reference/form/slots-of.ts';
import { typedOf } from '../../reference/form/typed-of.ts';
import type { Working } from '../workings.ts';
import { knownOf, WORKED_IN, type WorkedStep } from './kinds.ts';

export interface Bench {
  readonly computations: ReadonlyMap<string, Registered>;
  readonly workings: readonly Working[];
}

/** Which computation of the step is on the page: the one asked for, or the usual one. */
export function chosenComputation(step: WorkedStep, bench: Bench, asked: string | undefined): Registered {
  const names: readonly string[] = WORKED_IN[step];
  const name = names.find((each) => each === asked) ?? names[0] ?? '';
  const found = bench.computations.get(name);
  if (found === undefined) throw new Error(`the step ${step} needs ${name}`);
  return found;
}

function workingForm(sight: Sight, step: WorkedStep, each: Registered, again: Again | undefined): PageForm {
  const controls = controlsOf(each.input);
  const initial = typedOf(controls, knownOf(each.name, sight.build.spec));
  const labels = leavesOf(controls, again?.typed ?? initial).map((leaf) => [leaf.name, leaf.label] as const);
  return {
    name: 'working',
    action: `${sight.base}/workings/${step}`,
    labels: Object.fromEntries(labels),
    hidden: { computation: each.name },
    initial,
    groups: (shown) => formGroups(controls, shown),
    buttons: [{ label: 'Compute and keep', kind: 'primary', key: 'k' }],
  };
}

function isAnswer(value: unknown): value is Answer {
  return (
    typeof value === 'object' &&
    value !== null &&
    'result' in value &&
    'assumptions' in value &&
    'cautions' in value
  );
}

function keptSlots(working: Working, each: Registered): Slot[] {
  if (!isAnswer(working.answer)) return [];
  const answer = working.answer;
  const drawings = drawingsOf(each, working.inputs, answer.result, 'inch').map((data) => ({
    template: '/parts/drawing',
    data,
  }));
  const facts: Slot = {
    template: '/parts/facts',
    data: {
      block: true,
      items: [
        { label: 'Kept', value: each.title, note: `line ${working.seq}` },
        { label: 'Who, when', value: `${working.by}, ${momentText(working.at)}` },
        { label: 'Build revision', value: String(working.revision) },
      ],
    },
  };
  const cautions = answer.cautions.map((text) => ({
    template: '/parts/notice',
    data: { kind: 'caution', text },
  }));
  return [
    facts,
    ...drawings,
    ...answerSlots(each, answer, { uncertainty: 0, limitSource: 'the default of the limits table' }),
    ...cautions,
  ];
}

/** A computation within the call: its form with what the build already says, and what was kept of it last. */
export function workingStep(
  sight: Sight,
  given: PageRequest,
  step: WorkedStep,
  bench: Bench,
  again: Again | undefined,
): StepBody {
  const each = chosenComputation(step, bench, again?.typed.computation ?? given.query.of);
  const form = workingForm(sight, step, each, again);
  const last = bench.workings.findLast((working) => working.computation === each.name);
  const others = WORKED_IN[step].filter((name) => name !== each.name);
  const links: Slot = {
    template: '/pages/call/actions',
    data: {
      buttons: others.map((name) => ({
        label: bench.computations.get(name)?.title ?? name,
        href: `${sight.base}/steps/${step}?of=${name}`,
      })),
    },
  };
  const lead: Slot = { template: '/parts/notice', data: { text: `${each.title}: ${each.summary}` } };
  return {
    forms: [form],
    slots: [lead, formSlot(form, again), ...(last === undefined ? [] : keptSlots(last, each)), links],
  };
}
