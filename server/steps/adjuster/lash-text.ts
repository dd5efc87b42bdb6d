import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { inField } from '../../call/worked/in-field.ts';
import type { Side } from '../../mechanics/assessment/evidence.ts';
import { type LoggedLash, logOfTheseArms } from '../../records/lash-log/lash-log.ts';

/** `5 intake set .016 in, cold`: a line of the log in words. */
export const lashText = ({ reading, moment, engine }: LoggedLash): string =>
  `${valveName(reading)} ${moment} ${asEntered(reading.reading.readAs)}${engine === 'not-said' ? '' : `, ${engine}`}`;

export const standingLines = ({ record }: CallContext): LoggedLash[] => logOfTheseArms(record.lashLines);

/** A gap that was found, as one figure, with its valve and heat. */
interface FoundGap {
  readonly name: string;
  readonly valve: Side;
  readonly gap: string;
  /** The same, to stand in a field. */
  readonly inForm: string;
  readonly engine: LoggedLash['engine'];
}

/** The one that was found last; one between two feelers is no figure. */
export function newestFound(context: CallContext): FoundGap | undefined {
  const found = standingLines(context)
    .filter(({ moment, reading }) => moment === 'found' && reading.reading.value !== undefined)
    .toSorted((a, b) => a.reading.seq - b.reading.seq)
    .at(-1);
  if (found === undefined) return undefined;
  const { reading, engine } = found;
  const gap = asEntered(reading.reading.readAs);
  const inForm = inField(reading.reading);
  return { name: valveName(reading), valve: sideOfValve(reading.valve), gap, inForm, engine };
}
