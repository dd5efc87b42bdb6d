import type { FormGroup } from '../../../views/parts/form.examples.ts';
import type { Working } from '../../records/workings/workings.ts';
import type { FormState } from '../../web/forms/fields.ts';
import type { Fields, FormFault } from '../../web/forms/read-form.ts';
import type { CallContext } from '../context.ts';

/** A form of a computation in the words of the bench: which fields it has, and how they become the computation's own. */
export interface PartForm {
  readonly labels: Readonly<Record<string, string>>;
  readonly button: string;
  /** Fields that make one input together: each that is left empty is asked for by its own name. */
  readonly allOf?: readonly string[];
  initial(context: CallContext, workings: readonly Working[]): Fields;
  groups(shown: FormState, context: CallContext, workings: readonly Working[]): readonly FormGroup[];
  /** The texts under the names of the computation's inputs. */
  toTyped(fields: Fields): Fields;
  /** A fault of the computation's input at the field it was typed into. */
  faultAt(fault: FormFault): FormFault;
}

/** Big at the bench; the first one has the focus at the desk. */
export const firstAt = (context: CallContext) =>
  context.side === 'bench' ? { big: true } : { autofocus: true };
export const atBench = (context: CallContext) => (context.side === 'bench' ? { big: true } : {});

export const sameField = (fault: FormFault): FormFault => fault;
