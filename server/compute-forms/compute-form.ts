import { defined } from '../../shared/defined.ts';
import { InputFaults } from '../../shared/problems/faults.ts';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import type { Answer, Registered } from '../compute/registry.ts';
import type { Fields, FormFault } from '../web/forms/read-form.ts';
import { bodyOf } from './form/body-of.ts';
import type { Control } from './form/control.ts';
import { controlsOf } from './form/controls-of.ts';
import { leavesOf } from './form/leaves.ts';
import { shownFaults } from './form/shown-faults.ts';
import { typedOf } from './form/typed-of.ts';

/** A form of a computation with what was typed, and its answer or its faults. */
export interface Computed {
  readonly controls: readonly Control[];
  readonly typed: Fields;
  readonly units: UnitSystem;
  /** The body of the JSON call that the form stands for. */
  readonly body: unknown;
  readonly answer?: Answer;
  /** The same in inches, for the drawing. */
  readonly inInches?: Answer;
  readonly faults: readonly FormFault[];
}

const unitsOf = (fields: Fields): UnitSystem => (fields.units === 'metric' ? 'metric' : 'inch');

type Answers = Pick<Computed, 'answer' | 'inInches'>;

/** How a computation is answered: here and now, or on a thread of its own. */
export type RunBeside = (body: unknown, units: UnitSystem) => Promise<Answer>;

/** The worked example, as it is typed into the form. */
export function exampleTyped(each: Registered, fields: Fields): Fields {
  return {
    ...typedOf(controlsOf(each.input), each.example.inputs),
    ...defined({ units: fields.units }),
  };
}

/** What was typed, read: what is computed from it, and the form that its answer or its faults make. */
function readTyped(each: Registered, typed: Fields, ofCall: boolean) {
  const controls = controlsOf(each.input);
  const units = unitsOf(typed);
  const built = bodyOf(controls, typed, ofCall);
  const common = { controls, typed, units, body: built.body };
  return {
    units,
    body: built.body,
    // Asked for one more row: the form is shown again, nothing is computed from half of it.
    isMore: typed.more !== undefined && typed.more !== '',
    asked: (): Computed => ({ ...common, faults: [] }),
    answered: (answers: Answers): Computed =>
      built.faults.length > 0 ? { ...common, faults: built.faults } : { ...common, ...answers, faults: [] },
    refused(error: unknown): Computed {
      if (!(error instanceof InputFaults)) throw error;
      const faults = shownFaults(error.faults, leavesOf(controls, typed));
      // A field that could not be read is not missing as well.
      const read = faults.filter(({ field }) => built.faults.every((each) => each.field !== field));
      return { ...common, faults: [...built.faults, ...read] };
    },
  };
}

/**
 * Computes what was typed through the call that JSON has; a fault leaves everything as it stands. Of a call, numbers are
 * read by what each field can be.
 */
export function computeForm(each: Registered, typed: Fields, ofCall = false): Computed {
  const form = readTyped(each, typed, ofCall);
  if (form.isMore) return form.asked();
  try {
    const answer = each.run(form.body, form.units);
    return form.answered({
      answer,
      inInches: form.units === 'inch' ? answer : each.run(form.body, 'inch'),
    });
  } catch (error) {
    return form.refused(error);
  }
}

/** The same for whoever asks from outside, where it may be long: `run` says where it is done. */
export async function computeFormBeside(each: Registered, typed: Fields, run: RunBeside): Promise<Computed> {
  const form = readTyped(each, typed, false);
  if (form.isMore) return form.asked();
  try {
    const answer = await run(form.body, form.units);
    return form.answered({
      answer,
      inInches: form.units === 'inch' ? answer : await run(form.body, 'inch'),
    });
  } catch (error) {
    return form.refused(error);
  }
}
