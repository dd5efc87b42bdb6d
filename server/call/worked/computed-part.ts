import { defined } from '../../../shared/defined.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Drawing } from '../../drawings/drawing.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import type { Working } from '../../records/workings/workings.ts';
import { noticeComponent } from '../../web/components.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import type { CallContext } from '../context.ts';
import { formComponent, type Guide, type StepBody } from '../forms.ts';
import { headlineNamed } from '../headline.ts';
import { questionCards } from '../question-form.ts';
import { isStopped } from '../under-stop.ts';
import { arrangedComponents, drawingComponents } from './arranged.ts';
import { computedForm } from './computed-form.ts';
import { keptComponents } from './kept-answer.ts';
import type { PartView, WorkedData, WorkedPart } from './part.ts';
import type { PartForm } from './part-form.ts';
import { workingsTable } from './striking-out.ts';
import { besideSaid, outdatedSaid } from './told.ts';

interface ComputedPartOf {
  readonly name: string;
  readonly title: string;
  readonly words: { readonly say: string; readonly how: string };
  readonly turns: boolean;
  readonly guide?: Guide;
  readonly computation: string;
  /** A form in the words of the bench; left out, the one that the schema makes. */
  readonly form?: PartForm;
  /** What is looked at or measured, drawn before anything is typed. */
  asked(typed: Fields): readonly Drawing[];
  /** The last line kept of it; left out, the last of its computation. */
  last?(workings: readonly Working[]): Working | undefined;
  kept?(workings: readonly Working[]): string;
  /** The headline of the assessment that says what the last line comes to. */
  readonly headline?: string;
  /** Questions of the assessment that are answered here. */
  questions?(context: CallContext): readonly AssessedQuestion[];
  /** What the last line says, what it costs, and where it leads. */
  followUp?(context: CallContext, workings: readonly Working[], last: Working): Component[];
}

/** A part of a step that is one computation: its drawing, its form, and what was kept. */
export function computedPart<Loaded extends WorkedData>(of: ComputedPartOf): WorkedPart<Loaded> {
  const lastOf = (workings: readonly Working[]) =>
    of.last === undefined
      ? workings.findLast(({ computation }) => computation === of.computation)
      : of.last(workings);
  const lineOf = (workings: readonly Working[]) => {
    const last = lastOf(workings);
    return last === undefined ? '' : `line ${last.seq}`;
  };
  function body({ workings, computations }: Loaded, view: PartView): StepBody {
    const each = computations.get(of.computation);
    if (each === undefined) throw new Error(`the part ${of.name} has no computation`);
    const { context, rejected } = view;
    const form = computedForm(of.name, each, of.form, workings, view);
    const last = lastOf(workings);
    const open = !(of.turns && isStopped(context));
    const cards = questionCards(context, of.questions?.(context) ?? [], rejected);
    return {
      forms: [...(open ? [form] : []), ...cards.forms],
      slots: arrangedComponents({
        side: context.side,
        drawings: open ? drawingComponents(of.asked(rejected?.typed ?? form.initial ?? {})) : [],
        entry: open ? [formComponent(form, rejected)] : [],
        // What follows from it, and how it is done, is told again once it may be turned.
        top: [
          ...headlineNamed(context, of.headline),
          ...(last === undefined || !open ? [] : (of.followUp?.(context, workings, last) ?? [])),
          ...cards.slots,
        ],
        rest: [
          ...[last === undefined ? undefined : besideSaid(context, last)].flatMap((said) =>
            said === undefined ? [] : [noticeComponent(said)],
          ),
          ...(last === undefined
            ? []
            : keptComponents(last, each, open, {
                ...defined({ outdated: outdatedSaid(context, last) }),
                open: context.assessment.details.timing.open.includes(last.id),
              })),
          ...workingsTable(
            context,
            view.step,
            computations,
            ({ computation }) => computation === of.computation,
          ),
        ],
        begun: last !== undefined,
      }),
    };
  }
  return {
    name: of.name,
    title: of.title,
    words: of.words,
    turns: of.turns,
    ...defined({ guide: of.guide }),
    computed: { computation: of.computation, ...defined({ form: of.form }) },
    kept: ({ workings }) => (of.kept === undefined ? lineOf(workings) : of.kept(workings)),
    body,
  };
}
