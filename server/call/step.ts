import { speaking } from '../../shared/quantities/spoken-units.ts';
import type { StepName } from '../../shared/steps.ts';
import type { Registered } from '../compute/registry.ts';
import type { PageAsked } from '../web/page-request.ts';
import type { CallContext } from './context.ts';
import type { RejectedForm, StepBody } from './forms.ts';
import type { ReportPart } from './report-parts.ts';
import type { EntryCorrection } from './step-correction.ts';
import type { StepForm } from './step-form.ts';
import type { TakeoverItem } from './takeover-items.ts';
import type { Tells } from './tell-events.ts';
import type { WorksheetRows } from './worksheet-rows.ts';

/** What a person is told and asked at a step. */
interface StepWords {
  /** The heading, as an action. */
  readonly title: string;
  /** Its name in lists and links. */
  readonly link: string;
  /** What the desk asks the caller. */
  readonly say: string;
  /** The same where what is on record asks for other words; left out, or undefined, what is always asked. */
  readonly sayNow?: (context: CallContext) => string | undefined;
  /** How the builder does it. */
  readonly how: string;
  /** It takes turning the engine: under a stop its words and its heading give way to why nobody does. */
  readonly turns: boolean;
}

/** What a step is made from: the call's context, which has the whole record of the build, and the computations. */
export interface StepSource {
  readonly context: CallContext;
  readonly computations: ReadonlyMap<string, Registered>;
}

/** A page of the step being made. */
export interface StepPageInput {
  readonly context: CallContext;
  readonly req: PageAsked;
  readonly rejected: RejectedForm | undefined;
}

/** A step of a call: everything that it shows, asks, keeps and prints, declared once. */
interface StepDefinition<Name extends StepName, Loaded, Told extends Tells> {
  readonly name: Name;
  /** The key that opens it at the desk. */
  readonly key: string;
  readonly words: StepWords;
  /** Its page needs the shop's catalogue even before anything was read of a part. */
  readonly catalogue?: boolean;
  /** What its page, report and takeover card are made from; calculated once. */
  load(source: StepSource): Loaded;
  page(loaded: Loaded, input: StepPageInput): StepBody;
  readonly forms: readonly StepForm[];
  /** How an entry that this step keeps is put right. */
  readonly corrections: readonly EntryCorrection[];
  /** What the tape says of the events that it leaves. */
  readonly told: Told;
  /** What goes with its figures wherever they are printed. */
  cautions(loaded: Loaded, context: CallContext): readonly string[];
  /** Its parts of the report, each under the name that a goal's plan orders them by. */
  report(loaded: Loaded, context: CallContext): readonly ReportPart[];
  takeover(loaded: Loaded, context: CallContext): readonly TakeoverItem[];
  /** What a blank sheet for the bench has of it. */
  worksheet(context: CallContext): WorksheetRows;
}

/** A step with what it loads from kept inside: the frame of a call handles every step alike. */
export interface Step<Name extends StepName = StepName, Told extends Tells = Tells> {
  readonly name: Name;
  readonly key: string;
  readonly words: StepWords;
  readonly catalogue: boolean;
  readonly forms: readonly StepForm[];
  readonly corrections: readonly EntryCorrection[];
  readonly told: Told;
  worksheet(context: CallContext): WorksheetRows;
  open(source: StepSource): OpenStep;
}

export interface OpenStep {
  page(input: StepPageInput): StepBody;
  cautions(): readonly string[];
  report(): readonly ReportPart[];
  takeover(): readonly TakeoverItem[];
}

/** Declares a step. A part left out does not compile. */
export function defineStep<const Name extends StepName, Loaded, Told extends Tells>(
  definition: StepDefinition<Name, Loaded, Told>,
): Step<Name, Told> {
  const { name, key, words, catalogue = false, forms, corrections, told } = definition;
  return {
    name,
    key,
    words,
    catalogue,
    forms,
    corrections,
    told,
    worksheet: (context) => speaking(context.build.units, () => definition.worksheet(context)),
    open(source) {
      const { units } = source.context.build;
      const loaded = speaking(units, () => ({ it: definition.load(source) })).it;
      return {
        page: (input) => speaking(units, () => definition.page(loaded, input)),
        cautions: () => speaking(units, () => definition.cautions(loaded, source.context)),
        report: () => speaking(units, () => definition.report(loaded, source.context)),
        takeover: () => speaking(units, () => definition.takeover(loaded, source.context)),
      };
    },
  };
}
