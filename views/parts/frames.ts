import type { Component } from './components.ts';
import type { FactsData } from './facts.examples.ts';
import type { HoldData } from './hold.examples.ts';
import type { MissingData } from './missing.examples.ts';
import type { TapeData } from './tape.examples.ts';

/** `/parts/frame-desk`: missing, step and tape beside one another. */
export interface DeskFrame {
  readonly hold?: HoldData;
  readonly missing: MissingData;
  readonly step: readonly Component[];
  readonly tape: TapeData;
}

/** `/parts/frame-builder`: one step, the tape one tap away. */
export interface BuilderFrame {
  readonly hold?: HoldData;
  readonly step: readonly Component[];
  readonly tape: TapeData;
}

/** `/parts/frame-report`: a sheet to print: what is read first, and on its back pages what it rests on and the tape. */
export interface ReportFrame {
  readonly title: string;
  readonly facts: FactsData['items'];
  readonly sections: readonly Component[];
  readonly behind: readonly Component[];
  readonly tape?: TapeData;
}

/** `/parts/frame-plain`: a page of text and parts, one under the other. */
export interface PlainFrame {
  readonly title: string;
  readonly intro?: string;
  readonly sections: readonly Component[];
  /** A table is what the page is about: it has the whole width. */
  readonly wide?: boolean;
}
