import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { PagerData } from '../../../views/parts/pager.examples.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { tableComponent } from '../../web/components.ts';
import type { CallContext } from '../context.ts';
import { foldComponent } from '../fold.ts';
import type { RejectedForm, StepBody } from '../forms.ts';
import type { StepPageInput } from '../step.ts';
import { TURNING_GUIDE } from '../turning-guide.ts';
import { isStopped, wordsUnderStop } from '../under-stop.ts';
import type { WorkedData, WorkedPart, WorkedStep } from './part.ts';

const addressOf = (context: CallContext, step: string, part: string) =>
  `${context.base}/steps/${step}?of=${part}`;

/** The parts of the step, what is on record of each, and the way to it. */
function overviewTable<Loaded extends WorkedData>(
  context: CallContext,
  step: WorkedStep<Loaded>,
  current: string,
  loaded: Loaded,
): TableData {
  return {
    caption: step.chained ? 'The chain: each one feeds the next' : 'The parts of this step',
    columns: [{ label: 'Part' }, { label: 'On record' }],
    rows: step.parts.map((part) => {
      const text = part.kept(loaded) || 'nothing kept yet';
      const cell: TableCell =
        part.name === current
          ? { text, why: 'open here' }
          : { text, href: addressOf(context, step.name, part.name) };
      return { cells: [inSpoken(part.title), cell] };
    }),
  };
}

/** The parts side by side, in one line: which is open, and which has something on record. */
const partLinks = <Loaded extends WorkedData>(
  context: CallContext,
  { name, parts }: WorkedStep<Loaded>,
  current: WorkedPart<Loaded>,
  loaded: Loaded,
): Component => ({
  template: '/pages/call/part-links',
  data: {
    label: 'Parts of this step',
    parts: parts.map((part) => ({
      label: inSpoken(part.title),
      href: addressOf(context, name, part.name),
      current: part === current,
      kept: part.kept(loaded) !== '',
    })),
  },
});

/** At the bench the parts are screens, one after the other. */
function screensOf<Loaded extends WorkedData>(
  context: CallContext,
  { name, parts }: WorkedStep<Loaded>,
  current: WorkedPart<Loaded>,
): Partial<Omit<PagerData, 'label'>> {
  const at = parts.indexOf(current);
  const link = (part: WorkedPart<Loaded>) => ({
    href: addressOf(context, name, part.name),
    label: inSpoken(part.title),
  });
  const [before, after] = [parts[at - 1], parts[at + 1]];
  return {
    ...(before === undefined ? {} : { previous: link(before) }),
    position: `${at + 1} of ${parts.length}`,
    ...(after === undefined ? {} : { next: link(after) }),
  };
}

/** The part whose form came back with a fault. */
function returned<Loaded extends WorkedData>(
  { parts }: WorkedStep<Loaded>,
  rejected: RejectedForm | undefined,
): WorkedPart<Loaded> | undefined {
  if (rejected === undefined) return undefined;
  const { form, part, computation } = rejected.typed;
  if (form === 'working') return parts.find(({ name }) => name === (part ?? computation));
  const having = parts.filter((each) => each.form !== undefined && each.form === form);
  return having.find(({ name }) => name === part) ?? having[0];
}

/** The parts that the valve gear of this engine has a use for. */
const forEngine = <Loaded extends WorkedData>(
  step: WorkedStep<Loaded>,
  { assessment }: CallContext,
): WorkedStep<Loaded> => ({
  ...step,
  parts: step.parts.filter(({ name }) => !assessment.details.gear.parts.includes(name)),
});

/** The part that what is next is entered in. */
const asked = ({ assessment: { next } }: CallContext, step: string): string | undefined =>
  next?.step === step ? next.at?.part : undefined;

/** A step that computes and measures: one of its parts, what was kept of it, and the way to the others. */
export function workedPage<Loaded extends WorkedData>(
  whole: WorkedStep<Loaded>,
  loaded: Loaded,
  { context, req, rejected }: StepPageInput,
): StepBody {
  const step = forEngine(whole, context);
  const named = (name: string | undefined) => step.parts.find((part) => part.name === name);
  const part =
    returned(whole, rejected) ??
    named(req.query.of) ??
    named(asked(context, step.name)) ??
    named(step.opens(context, loaded)) ??
    step.parts[0];
  if (part === undefined) throw new Error(`the step ${step.name} has no parts`);
  const body = part.body(loaded, { context, rejected, step: step.name });
  const overview = tableComponent(overviewTable(context, step, part.name, loaded));
  const heading: Component = { template: '/pages/call/heading', data: { text: inSpoken(part.title) } };
  return {
    forms: body.forms,
    ...(part.turns && !isStopped(context) ? { guide: part.guide ?? TURNING_GUIDE } : {}),
    shows: `of=${part.name}`,
    slots: [
      ...(context.side === 'desk' ? [partLinks(context, step, part, loaded)] : []),
      heading,
      ...body.slots,
      foldComponent('parts-of-step', 'All parts of this step, and what is on record', [overview]),
    ],
    screens: screensOf(context, step, part),
    words: (part.turns ? wordsUnderStop(context) : undefined) ?? part.words,
  };
}
