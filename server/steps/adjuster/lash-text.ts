import { type CallContext, valveName } from '../../call/context.ts';
import { type LoggedLash, logOfTheseArms } from '../../records/lash-log/lash-log.ts';

/** `5 intake set .016 in, cold`: a line of the log in words. */
export const lashText = ({ reading, moment, engine }: LoggedLash): string =>
  `${valveName(reading)} ${moment} ${reading.reading.readAs}${engine === 'not-said' ? '' : `, ${engine}`}`;

export const standingLines = ({ record }: CallContext): LoggedLash[] => logOfTheseArms(record.lashLines);
