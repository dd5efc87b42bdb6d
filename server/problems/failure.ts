import type { InputFaults } from '../../shared/problems/faults.ts';
import type { ProblemCode } from './registry.ts';

/** An expected failure of an operation; its code decides status and public message. */
export class Failure extends Error {
  readonly code: ProblemCode;
  readonly detail: string;
  readonly headers: Readonly<Record<string, string>>;
  /** The line of the record that it is about: a page leads there. */
  readonly line: number | undefined;
  constructor(
    code: ProblemCode,
    detail: string,
    options: { headers?: Record<string, string>; cause?: unknown; line?: number } = {},
  ) {
    super(detail, { cause: options.cause });
    this.name = 'Failure';
    this.code = code;
    this.detail = detail;
    this.headers = options.headers ?? {};
    this.line = options.line;
  }
}

/** The database can't serve this now; the caller may try again. */
export class ServiceBusy extends Failure {
  constructor(detail: string, cause?: unknown) {
    super('service-busy', detail, { headers: { 'retry-after': '2' }, cause });
    this.name = 'ServiceBusy';
  }
}

export const notFound = (what: string) => new Failure('not-found', `no such ${what}`);

/** A refusal with what else the client is told: of a sheet that was refused, what its readings are asked. */
export class RefusedWith extends Error {
  readonly refusal: Failure | InputFaults;
  readonly questions: readonly object[];
  constructor(refusal: Failure | InputFaults, questions: readonly object[]) {
    super(refusal.message, { cause: refusal });
    this.name = 'RefusedWith';
    this.refusal = refusal;
    this.questions = questions;
  }
}
