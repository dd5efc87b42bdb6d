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

function answerTo(each: Registered, body: unknown, units: UnitSystem): Pick<Computed, 'answer' | 'inInches'> {
  const answer = each.run(body, units);
  return { answer, inInches: units === 'inch' ? answer : each.run(body, 'inch') };
}

/** The worked example, as a form that was just computed. */
export function exampleForm(each: Registered, fields: Fields): Computed {
  const controls = controlsOf(each.input);
  const typed = typedOf(controls, each.example.inputs);
  return computeForm(each, { ...typed, ...defined({ units: fields.units }) });
}

/**
 * Computes what was typed through the call that JSON has; a fault leaves everything as it stands. Of a call, numbers are
 * read by what each field can be.
 */
export function computeForm(each: Registered, typed: Fields, ofCall = false): Computed {
  const controls = controlsOf(each.input);
  const units = unitsOf(typed);
  const built = bodyOf(controls, typed, ofCall);
  const common = { controls, typed, units, body: built.body };
  // Asked for one more row: the form is shown again, nothing is computed from half of it.
  if (typed.more !== undefined && typed.more !== '') return { ...common, faults: [] };
  try {
    const answered = answerTo(each, built.body, units);
    return built.faults.length > 0
      ? { ...common, faults: built.faults }
      : { ...common, ...answered, faults: [] };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const faults = shownFaults(error.faults, leavesOf(controls, typed));
    // A field that could not be read is not missing as well.
    const read = faults.filter(({ field }) => built.faults.every((each) => each.field !== field));
    return { ...common, faults: [...built.faults, ...read] };
  }
}
