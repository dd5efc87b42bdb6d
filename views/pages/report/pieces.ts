import type { Component } from '../../parts/components.ts';
import type { Fact } from '../../parts/facts.examples.ts';

/** Components beside one another; `wide` where the first needs more room than the second. */
interface BesideData {
  readonly slots: readonly Component[];
  readonly wide?: boolean;
}

/** Whether somebody has to stop, and why. */
export interface StopFlag {
  readonly stands: boolean;
  readonly word: string;
  readonly text: string;
  /** Each thing that stops it, and what has to be done before it may be lifted. */
  readonly reasons: readonly { readonly sentence: string; readonly wayOut: string }[];
}

/** What is read in twenty seconds. */
interface SummaryData {
  readonly stop: StopFlag;
  readonly parts: readonly { readonly title: string; readonly items: readonly string[] }[];
}

interface PrintedPhotographsData {
  readonly photographs: readonly {
    readonly src: string;
    readonly width: number;
    readonly height: number;
    readonly alt: string;
    readonly shows: string;
    readonly caption: string;
    /** Which line of the tape it proves. */
    readonly proves: string;
    readonly who: string;
  }[];
  /** How many the sheet has no room for. */
  readonly more?: string;
}

/** The pieces that the report is made of, beside the parts that every page may use. */
export interface ReportPieces {
  readonly '/pages/report/beside': BesideData;
  readonly '/pages/report/column': { readonly slots: readonly Component[] };
  readonly '/pages/report/photographs': PrintedPhotographsData;
  readonly '/pages/report/run': { readonly title: string; readonly items: readonly Fact[] };
  readonly '/pages/report/said': { readonly title: string; readonly text: string };
  readonly '/pages/report/section': { readonly title: string; readonly slots: readonly Component[] };
  readonly '/pages/report/summary': SummaryData;
}
