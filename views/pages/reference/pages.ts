import type { Component } from '../../parts/components.ts';
import type { ErrorSummaryData } from '../../parts/error-summary.examples.ts';
import type { Fact, FactsData } from '../../parts/facts.examples.ts';
import type { FormData } from '../../parts/form.examples.ts';
import type { NoticeData } from '../../parts/notice.examples.ts';
import type { TableData } from '../../parts/table.examples.ts';

/** The list of computations. */
export interface ReferencePageData {
  readonly asked: string;
  /** Something was looked for; then `count` says how many were found. */
  readonly searched: boolean;
  readonly count: number;
  readonly shelves: readonly {
    readonly title: string;
    readonly items: readonly { readonly href: string; readonly title: string; readonly summary: string }[];
  }[];
}

export interface ComputedAnswer {
  readonly title: string;
  readonly slots: readonly Component[];
  readonly cautions: readonly NoticeData[];
  readonly assumptions: readonly string[];
  /** The address that shows this answer again; left out where it would be too long. */
  readonly link?: string | undefined;
  readonly json: string;
}

/** One computation: its equation, its form, the answer, what it rests on and the same call as JSON. */
export interface ComputationPageData {
  readonly title: string;
  readonly summary: string;
  readonly errors: ErrorSummaryData['errors'];
  /** MathML that our own code made, line by line. */
  readonly equations: readonly string[];
  readonly equationText: string;
  readonly form: FormData;
  readonly answer: ComputedAnswer | undefined;
  readonly basis: readonly Fact[];
  readonly tables: readonly TableData[];
  readonly call: string;
}

export interface ApiOperationData {
  readonly id: string;
  readonly method: string;
  readonly path: string;
  readonly summary: string;
  readonly needsKey: boolean;
  /** A computation has its fields on the page of its own. */
  readonly computation: string | undefined;
  readonly facts: FactsData;
  readonly tables: readonly TableData[];
}

/** The JSON API by subject. */
export interface ApiPageData {
  readonly subjects: readonly {
    readonly name: string;
    readonly title: string;
    readonly description: string;
    readonly operations: readonly ApiOperationData[];
  }[];
  readonly shapes: readonly { readonly id: string; readonly name: string; readonly table: TableData }[];
  readonly problems: TableData;
  readonly faults: TableData;
}

/** One problem, or with `all` the list of them. */
export interface ProblemPageData {
  readonly title: string;
  readonly intro?: string;
  readonly meaning?: string;
  readonly advice?: string;
  readonly facts?: FactsData;
  readonly all?: readonly { readonly code: string; readonly title: string; readonly status: number }[];
  readonly faults?: TableData | undefined;
  readonly example?: string;
}
