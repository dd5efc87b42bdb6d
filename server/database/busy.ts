import { memberOf } from '../../shared/member.ts';
import { ServiceBusy } from '../problems/failure.ts';

/** SQLSTATE and system codes of a database that can't be reached, or ended our connection. */
const UNREACHABLE = new Set([
  '57P01',
  '57P02',
  '57P03',
  '57P05',
  '25P03',
  '08003',
  '08006',
  '08001',
  '53300',
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOENT',
  'EPIPE',
  'ETIMEDOUT',
]);
/** A statement or a lock that took longer than the role may wait. */
const TOO_LONG = new Set(['57014', '55P03']);

export function codeOf(error: unknown): string {
  const code = memberOf(error, 'code');
  return typeof code === 'string' ? code : '';
}

/** An error of the database as the caller should hear it: what may well work in a moment is told so. */
export function busyWhenUnreachable(error: unknown): unknown {
  const code = codeOf(error);
  const message = error instanceof Error ? error.message : '';
  if (TOO_LONG.has(code)) return new ServiceBusy('the database was too busy for this', error);
  if (
    UNREACHABLE.has(code) ||
    /timeout exceeded when trying to connect|Connection terminated|not queryable/i.test(message)
  )
    return new ServiceBusy('the database can’t be reached', error);
  return error;
}
